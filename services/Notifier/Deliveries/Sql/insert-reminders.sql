insert into delivery (alert_id, times_raised, event, channel, urgency, state, attempts, due_at, next_attempt_at, created_at)
select a.alert_id, a.times_raised, 'reminder', @channel, case when a.level = 'block' then 0 else 1 end, 'pending', 0,
       case when a.level = 'block' then @now else @quietUntil end, case when a.level = 'block' then @now else @quietUntil end, @now
from qc_alert a
where a.state = 'open' and a.acknowledged_at is null and a.level in ('block', 'hold')
  and (exists (
          select 1 from delivery r
          where r.alert_id = a.alert_id and r.times_raised = a.times_raised and r.event = 'raised' and r.channel = @channel
            and r.state = 'delivered' and r.delivered_at <= @remindBefore)
      or (exists (
              select 1 from delivery r
              where r.alert_id = a.alert_id and r.times_raised = a.times_raised and r.event = 'raised' and r.created_at <= @escalateBefore)
          and not exists (
              select 1 from delivery r
              where r.alert_id = a.alert_id and r.times_raised = a.times_raised and r.event = 'raised' and r.channel = @channel)))
  and not exists (
      select 1 from delivery t
      where t.alert_id = a.alert_id and t.times_raised = a.times_raised and t.event = 'reminder' and t.channel = @channel)
