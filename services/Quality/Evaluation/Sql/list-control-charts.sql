select distinct u.instrument, c.material, c.quantity_id as QuantityId
from control_check c
join instrument_run u on u.run_id = c.run_id
where c.standing = 0
order by u.instrument, c.material, c.quantity_id
