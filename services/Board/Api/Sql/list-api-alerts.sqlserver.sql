select alert_id as Number, rule_name as RuleName, level as Level, state as State, trial_code as Trial, pull_no as Pull, barcode as Barcode,
       headline as Headline, advice as Advice, facts as Facts, opened_at as OpenedAt, cleared_at as ClearedAt,
       acknowledged_at as SeenAt, acknowledged_by as SeenBy, settled_at as SettledAt, settled_by as SettledBy, settled_why as SettledWhy
from qc_alert
where (@State is null or state = @State) and (@Level is null or level = @Level) and (@Trial is null or trial_code = @Trial)
order by alert_id
offset @Skip rows fetch next @Size rows only
