select r.barcode, r.quantity_id as QuantityId, count(*) as Readings, min(r.measured_at) as FirstMeasuredAt
from sample s
join reading r on r.barcode = s.barcode and r.standing = 0
where s.trial_code = @TrialCode and s.pull_no = @PullNo
group by r.barcode, r.quantity_id
