select m.barcode, m.quantity_id as QuantityId, m.state, m.readings, m.reason
from sample s
join measurement_state m on m.barcode = s.barcode
where s.trial_code = @trialCode and s.pull_no = @pullNo
