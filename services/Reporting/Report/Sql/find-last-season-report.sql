select coalesce(max(version), 0) from season_report where trial_code = @trialCode
