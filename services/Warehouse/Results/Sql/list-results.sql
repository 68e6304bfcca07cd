select barcode, quantity_id as QuantityId, value, below_limit as BelowLimit, n, s, basis, from_readings as FromReadings, computed_at as ComputedAt, in_doubt as InDoubt
from sample_result
where barcode in @barcodes
order by barcode, quantity_id
