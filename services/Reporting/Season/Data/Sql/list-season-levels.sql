select factor, level, unit, position
from factor_level
where trial_code = @trialCode
order by position
