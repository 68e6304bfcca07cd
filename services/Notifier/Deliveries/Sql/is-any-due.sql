select case when exists (
    select 1 from delivery where channel = @channel and state = 'pending' and next_attempt_at <= @now) then 1 else 0 end
