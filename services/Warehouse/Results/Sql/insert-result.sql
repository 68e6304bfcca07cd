insert into sample_result (barcode, quantity_id, value, below_limit, n, s, basis, from_readings, computed_at, in_doubt)
values (@Barcode, @QuantityId, @Value, @BelowLimit, @N, @S, @Basis, @FromReadings, @ComputedAt, @InDoubt)
