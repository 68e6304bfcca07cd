select t.test_id as TestId, t.channel, t.asked_at as AskedAt, t.asked_by as AskedBy, t.state, t.ended_at as EndedAt, t.reason
from channel_test t
where not exists (select 1 from channel_test later where later.channel = t.channel and later.test_id > t.test_id)
order by t.channel
