update channel_test set state = @state, ended_at = @now, reason = @reason where test_id = @TestId and state = 'waiting'
