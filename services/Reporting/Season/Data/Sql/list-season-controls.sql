select u.instrument as Instrument, c.material as Material, c.quantity_id as QuantityId, c.value as Value, c.measured_at as MeasuredAt,
       c.file_id as FileId, c.line as Line
from control_check c
join instrument_run u on u.run_id = c.run_id
where c.standing = 0
  and c.file_id in (select r.file_id
                    from reading r
                    join sample s on s.barcode = r.barcode
                    where s.trial_code = @trialCode)
order by u.instrument, c.material, c.quantity_id, c.measured_at, c.reading_id
