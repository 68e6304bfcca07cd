insert into delivery (alert_id, times_raised, event, channel, urgency, state, attempts, due_at, next_attempt_at, created_at)
select o.alert_id, o.times_raised, 'undelivered', @channel, o.urgency, 'pending', 0,
       case when o.urgency = 0 then @now else @quietUntil end, case when o.urgency = 0 then @now else @quietUntil end, @now
from (select alert_id, times_raised, min(urgency) as urgency from delivery
      where event = 'raised' and channel <> @channel and due_at > @since
        and (state = 'failed' or (state = 'pending' and due_at <= @owedBefore))
      group by alert_id, times_raised) o
where not exists (
    select 1 from delivery t
    where t.alert_id = o.alert_id and t.times_raised = o.times_raised and t.event = 'undelivered' and t.channel = @channel)
