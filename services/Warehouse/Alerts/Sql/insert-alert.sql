insert into qc_alert (fingerprint, rule_name, level, scope, trial_code, pull_no, barcode, headline, advice, facts, state, times_raised, opened_at, changed_at)
values (@Fingerprint, @RuleName, @Level, @Scope, @TrialCode, @PullNo, @Barcode, @Headline, @Advice, @Facts, @State, @TimesRaised, @OpenedAt, @ChangedAt)
