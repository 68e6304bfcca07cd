select line, quantity_id as QuantityId, value, raw_value as RawValue from fry_batch where file_id = @fileId order by line, quantity_id
