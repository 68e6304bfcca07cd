select test_id as TestId, channel, asked_at as AskedAt, asked_by as AskedBy, state, ended_at as EndedAt, reason
from channel_test
where state = 'waiting'
order by test_id
