delete from measurement_state where barcode = @Barcode and quantity_id = @QuantityId
