select l.plot_code as PlotCode, l.factor, l.level
from plot_level l
where l.trial_code = @trialCode
