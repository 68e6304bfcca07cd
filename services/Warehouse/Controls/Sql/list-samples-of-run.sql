select distinct r.barcode
from instrument_run u
join reading r on r.run_id = u.run_id and r.standing in (0, 3)
where u.instrument = @Instrument and u.run = @Run
order by r.barcode
