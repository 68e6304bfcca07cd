select distinct r.quantity_id
from sample s
join sample_result r on r.barcode = s.barcode
where s.trial_code = @trialCode
order by r.quantity_id
