select trial_code as TrialCode, name, factors, cell, coefficient, position, stated_at as StatedAt
from planned_contrast
where trial_code = @trialCode
order by position, cell
