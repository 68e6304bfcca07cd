select distinct r.run_id as RunId, u.instrument, u.run
from reading r
join instrument_run u on u.run_id = r.run_id
where r.barcode in @barcodes and r.standing = 0 and r.quantity_id in @quantities
