update delivery set next_attempt_at = @now
where state = 'pending' and attempts > 0 and last_error is null and next_attempt_at > @now
