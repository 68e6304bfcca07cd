select r.run_id as RunId, u.instrument, u.run, r.barcode, s.trial_code as TrialCode, s.pull_no as PullNo, p.clone as CloneCode, p.treatment,
       r.reading_id as ReadingId, r.quantity_id as QuantityId, r.value, r.tuber, f.name as FileName, r.measured_at as MeasuredAt
from sample s
join plot p on p.trial_code = s.trial_code and p.plot_code = s.plot_code
join reading r on r.barcode = s.barcode and r.standing = 0 and r.quantity_id in (10, 11)
join instrument_run u on u.run_id = r.run_id
join source_file f on f.file_id = r.file_id
where s.trial_code = @TrialCode and s.pull_no = @PullNo
