select distinct s.trial_code as TrialCode, s.pull_no as PullNo
from reading r
join sample s on s.barcode = r.barcode
where r.barcode in @barcodes and r.quantity_id in (10, 11) and (@fileId is null or r.file_id = @fileId)
