select alert_id as AlertId, fingerprint, rule_name as RuleName, level, scope, trial_code as TrialCode, pull_no as PullNo, barcode,
       headline, advice, facts, state, times_raised as TimesRaised, opened_at as OpenedAt, changed_at as ChangedAt, cleared_at as ClearedAt,
       acknowledged_at as AcknowledgedAt, acknowledged_by as AcknowledgedBy, settled_at as SettledAt, settled_by as SettledBy, settled_why as SettledWhy
from qc_alert
where state = 'open' and scope like @kind
order by alert_id
