insert into expected_measurement (trial_code, pull_no, quantity_id, readings) values (@TrialCode, @PullNo, @QuantityId, @Readings)
