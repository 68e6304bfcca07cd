select alert_id as AlertId, rule_name as RuleName, level as Level, state as State, pull_no as PullNo, barcode as Barcode, headline as Headline,
       settled_by as SettledBy, settled_why as SettledWhy
from qc_alert
where trial_code = @trialCode or barcode in (select barcode from sample where trial_code = @trialCode)
order by alert_id
