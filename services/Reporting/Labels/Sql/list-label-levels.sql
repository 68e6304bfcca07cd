select l.plot_code as PlotCode, l.level, f.unit
from plot_level l
join factor_level f on f.trial_code = l.trial_code and f.factor = l.factor and f.level = l.level
where l.trial_code = @trialCode
order by l.plot_code, f.position
