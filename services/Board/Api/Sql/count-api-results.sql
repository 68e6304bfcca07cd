select count(*)
from sample_result r
join sample s on s.barcode = r.barcode
join quantity q on q.quantity_id = r.quantity_id
where (@Trial is null or s.trial_code = @Trial) and (@Pull is null or s.pull_no = @Pull) and (@Quantity is null or q.name = @Quantity)
