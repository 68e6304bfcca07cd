-- The first condition on standing is that of the index on run_id.
select c.row_key as RowKey, c.quantity_id as QuantityId, c.material, c.value, c.measured_at as MeasuredAt, c.operator, f.name as FileName, c.line
from control_check c
join source_file f on f.file_id = c.file_id
where c.run_id = @runId and c.standing in (0, 3) and c.standing = 0
