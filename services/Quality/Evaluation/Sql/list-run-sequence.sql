-- The first condition on standing is that of the index on run_id.
select r.barcode, r.extract, r.measured_at as MeasuredAt, r.line
from reading r
where r.run_id = @RunId and r.standing in (0, 3) and r.standing = 0 and r.quantity_id in @quantities
