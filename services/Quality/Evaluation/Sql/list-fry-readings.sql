-- The first condition on standing is that of the index on run_id.
select b.run_id as RunId, b.row_key as RowKey, b.quantity_id as QuantityId, b.value, f.name as FileName, b.line
from fry_batch b
join source_file f on f.file_id = b.file_id
where b.run_id in @runIds and b.standing in (0, 3) and b.standing = 0
