select d.channel, min(d.due_at) as OldestDueAt, max(d.last_error) as LastError
from delivery d
join qc_alert a on a.alert_id = d.alert_id
where d.state in ('pending', 'failed') and d.event = 'raised' and a.state = 'open' and a.rule_name <> @ruleName
group by d.channel
order by d.channel
