select alert_id as AlertId, fingerprint, rule_name as RuleName, level, scope, trial_code as TrialCode, pull_no as PullNo, barcode,
       headline, advice, facts, state, times_raised as TimesRaised, opened_at as OpenedAt, changed_at as ChangedAt, cleared_at as ClearedAt,
       acknowledged_at as AcknowledgedAt, acknowledged_by as AcknowledgedBy, settled_at as SettledAt, settled_by as SettledBy, settled_why as SettledWhy
from qc_alert
where (@State is null or state = @State)
  and (@Level is null or level = @Level)
  and (@RuleName is null or rule_name = @RuleName)
  and (@TrialCode is null or trial_code = @TrialCode)
  and (@Barcode is null or barcode = @Barcode)
order by case when @WorstFirst = 1 then case level when 'block' then 0 when 'hold' then 1 else 2 end else 0 end, opened_at desc, alert_id desc
limit @Most offset @Skip
