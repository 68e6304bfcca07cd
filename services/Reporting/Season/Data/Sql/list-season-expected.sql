select pull_no as PullNo, quantity_id as QuantityId, readings as Readings
from expected_measurement
where trial_code = @trialCode
order by pull_no, quantity_id
