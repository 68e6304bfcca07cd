select coalesce(max(version), 0) from repeatability where quantity_id = @QuantityId
