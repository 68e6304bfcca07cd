select distinct r.barcode
from instrument_run u
join control_check c on c.run_id = u.run_id and c.standing in (0, 3) and c.material = @Material and c.quantity_id = @QuantityId
     and (c.measured_at is null or c.measured_at >= @InForceFrom)
join reading r on r.run_id = u.run_id and r.standing in (0, 3) and r.quantity_id = @QuantityId
where u.instrument = @Instrument
order by r.barcode
