select d.delivery_id as DeliveryId, d.alert_id as AlertId, d.times_raised as TimesRaised, d.event, d.channel, d.attempts,
       d.due_at as DueAt, a.fingerprint, a.level, a.rule_name as [Rule], a.trial_code as TrialCode, a.pull_no as PullNo, a.barcode,
       a.opened_at as OpenedAt, substring(a.headline, 1, 1000) as Headline,
       substring(a.advice, 1, 1000) as Advice, substring(a.facts, 1, 8001) as Facts,
       case when d.event = 'undelivered' then (
           select string_agg(u.channel, ', ') from delivery u
           where u.alert_id = d.alert_id and u.times_raised = d.times_raised and u.event = 'raised' and u.channel <> d.channel
             and (u.state = 'failed' or (u.state = 'pending' and u.due_at <= @owedBefore))) end as MissingOn,
       case when a.state = 'open' and a.acknowledged_at is null and a.times_raised = d.times_raised then 1 else 0 end as WaitsForSomebody
from delivery d
join qc_alert a on a.alert_id = d.alert_id
where d.channel = @channel and d.state = 'pending' and d.digest_id is null and d.next_attempt_at <= @now and d.urgency <= @leastUrgent
  and (d.event <> 'cleared' or exists (
      select 1 from delivery r
      where r.alert_id = d.alert_id and r.times_raised = d.times_raised and r.event = 'raised' and r.channel = d.channel
        and r.state = 'delivered'))
order by d.urgency, d.delivery_id limit @most
