update factor_level set position = @Position where trial_code = @TrialCode and factor = @Factor and level = @Level
