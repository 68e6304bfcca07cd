select line, quantity_id as QuantityId, value, raw_value as RawValue from control_check where file_id = @fileId order by line, quantity_id
