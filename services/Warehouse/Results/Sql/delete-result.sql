delete from sample_result where barcode = @Barcode and quantity_id = @QuantityId
