insert into measurement_state (barcode, quantity_id, state, readings, reason) values (@Barcode, @QuantityId, @State, @Readings, @Reason)
