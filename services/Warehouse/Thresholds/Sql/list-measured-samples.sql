select s.barcode
from sample s
where s.trial_code = @TrialCode and exists (select 1 from reading r where r.barcode = s.barcode)
order by s.barcode
