select coalesce(max(version), 0) from threshold where trial_code = @TrialCode and quantity_id = @QuantityId and kind = @Kind
