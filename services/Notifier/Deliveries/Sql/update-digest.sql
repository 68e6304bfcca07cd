update delivery
set state = @State, attempts = attempts + @AttemptStep, next_attempt_at = @NextAttemptAt, delivered_at = @DeliveredAt,
    last_attempt_at = coalesce(@LastAttemptAt, last_attempt_at), last_error = coalesce(@Error, last_error)
where channel = @channel and state = 'pending' and digest_id = @digestId
