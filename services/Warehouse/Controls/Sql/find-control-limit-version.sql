select coalesce(max(version), 0) from control_limit where instrument = @Instrument and material = @Material and quantity_id = @QuantityId
