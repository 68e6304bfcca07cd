select trial_code as TrialCode, pull_no as PullNo, rule_name as RuleName, level as Level, count(*) as Alerts
from qc_alert
where state = 'open'
group by trial_code, pull_no, rule_name, level
order by rule_name, level
