select line, quantity_id as QuantityId, value, raw_value as RawValue
from reading where reading_id between @first and @last and file_id = @fileId order by line, quantity_id
