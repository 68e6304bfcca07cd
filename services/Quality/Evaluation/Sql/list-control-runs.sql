-- The condition on standing is that of the index on run_id.
select distinct r.run_id
from reading r
where r.barcode in @barcodes and (@fileId is null or r.file_id = @fileId)
  and exists (select 1 from control_check c where c.run_id = r.run_id and c.standing in (0, 3))
