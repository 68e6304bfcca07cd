select distinct s.trial_code as TrialCode, s.pull_no as PullNo
from reading r
join sample s on s.barcode = r.barcode
where r.run_id in @runIds and r.quantity_id in (10, 11) and r.standing in (0, 3)
