update bay set set_point_c = @SetPointC where trial_code = @TrialCode and bay_code = @BayCode
