update delivery set digest_id = @digestId, attempts = attempts + @AttemptStep, next_attempt_at = @NextAttemptAt, last_attempt_at = @LastAttemptAt
where channel = @channel and state = 'pending' and digest_id is null and next_attempt_at <= @now
  and (event <> 'cleared' or exists (
      select 1 from delivery r
      where r.alert_id = delivery.alert_id and r.times_raised = delivery.times_raised and r.event = 'raised' and r.channel = delivery.channel
        and r.state = 'delivered'))
