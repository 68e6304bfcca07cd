select s.barcode
from sample s
where s.trial_code = @trialCode and exists (select 1 from reading r where r.barcode = s.barcode and r.standing in (0, 1))
order by s.barcode
