update sample_result
set value = @Value, below_limit = @BelowLimit, n = @N, s = @S, basis = @Basis, from_readings = @FromReadings, computed_at = @ComputedAt,
    in_doubt = @InDoubt
where barcode = @Barcode and quantity_id = @QuantityId
