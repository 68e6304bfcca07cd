update expected_measurement set readings = @Readings where trial_code = @TrialCode and pull_no = @PullNo and quantity_id = @QuantityId
