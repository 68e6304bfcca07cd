select r.barcode, r.quantity_id as QuantityId, count(*) as Readings, min(x.excluded_by) as ExcludedBy, min(x.why) as Why
from sample s
join reading r on r.barcode = s.barcode and r.standing = 3
left join reading_exclusion x on x.reading_id = r.reading_id
where s.trial_code = @TrialCode and s.pull_no = @PullNo
group by r.barcode, r.quantity_id
