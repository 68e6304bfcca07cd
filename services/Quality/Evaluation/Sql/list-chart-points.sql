-- The first condition on standing is that of the index on run_id.
select u.run, c.row_key as RowKey, c.value, c.measured_at as MeasuredAt, c.line
from instrument_run u
join control_check c on c.run_id = u.run_id and c.standing in (0, 3) and c.standing = 0
where u.instrument = @instrument and c.material = @material and c.quantity_id = @quantityId
  and (c.measured_at is null or c.measured_at >= @since)
