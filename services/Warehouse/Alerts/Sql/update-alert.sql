update qc_alert
set rule_name = @RuleName, level = @Level, scope = @Scope, trial_code = @TrialCode, pull_no = @PullNo, barcode = @Barcode,
    headline = @Headline, advice = @Advice, facts = @Facts, state = @State, times_raised = @TimesRaised, opened_at = @OpenedAt,
    changed_at = @ChangedAt, cleared_at = @ClearedAt, acknowledged_at = @AcknowledgedAt, acknowledged_by = @AcknowledgedBy,
    settled_at = @SettledAt, settled_by = @SettledBy, settled_why = @SettledWhy
where alert_id = @AlertId
