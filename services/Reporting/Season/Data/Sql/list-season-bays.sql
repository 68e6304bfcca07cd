select bay_code as BayCode, set_point_c as SetPointC
from bay
where trial_code = @trialCode
order by bay_code
