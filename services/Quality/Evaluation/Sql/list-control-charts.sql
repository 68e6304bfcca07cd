select distinct u.instrument, c.material, c.quantity_id as QuantityId
from (select distinct material, quantity_id, run_id from control_check where standing = 0) c
join instrument_run u on u.run_id = c.run_id
order by u.instrument, c.material, QuantityId
