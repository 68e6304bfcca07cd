select top (1) digest_id from delivery
where channel = @channel and state = 'pending' and digest_id is not null and next_attempt_at <= @now
order by digest_id
