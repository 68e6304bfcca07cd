-- The first condition on standing is that of the index on run_id.
select r.reading_id as ReadingId, r.barcode, s.trial_code as TrialCode, s.pull_no as PullNo, r.quantity_id as QuantityId,
       cast(r.row_key as nvarchar(200)) as RowKey, r.measured_at as MeasuredAt, r.line
from reading r
left join sample s on s.barcode = r.barcode
where r.run_id = @runId and r.standing in (0, 3) and r.standing = 0 and r.quantity_id in @quantities
