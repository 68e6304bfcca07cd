select quantity_id as QuantityId, readings
from expected_measurement
where trial_code = @TrialCode and pull_no = @PullNo
order by quantity_id
