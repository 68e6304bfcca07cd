insert into factor_level (trial_code, factor, level, unit, position) values (@TrialCode, @Factor, @Level, @Unit, @Position)
