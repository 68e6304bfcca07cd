insert into bay (trial_code, bay_code, set_point_c) values (@TrialCode, @BayCode, @SetPointC)
