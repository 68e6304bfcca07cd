update measurement_state set state = @State, readings = @Readings, reason = @Reason where barcode = @Barcode and quantity_id = @QuantityId
