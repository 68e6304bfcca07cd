select plot_code as PlotCode, factor, level
from plot_level
where trial_code = @trialCode
order by plot_code, factor
