select name, factors, cell, coefficient, stated_at as StatedAt
from planned_contrast
where trial_code = @trialCode
order by position, cell
