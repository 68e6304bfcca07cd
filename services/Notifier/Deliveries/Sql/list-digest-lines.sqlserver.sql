select top (@most) d.alert_id as AlertId, d.event, a.level, a.trial_code as TrialCode, a.pull_no as PullNo, substring(a.headline, 1, 1000) as Headline
from delivery d
join qc_alert a on a.alert_id = d.alert_id
where d.channel = @channel and d.state = 'pending' and d.digest_id = @digestId
order by d.urgency, d.delivery_id
