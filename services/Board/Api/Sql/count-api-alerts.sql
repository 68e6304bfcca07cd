select count(*) from qc_alert
where (@State is null or state = @State) and (@Level is null or level = @Level) and (@Trial is null or trial_code = @Trial)
