select trial_code as TrialCode, plot_code as PlotCode, block, main_plot as MainPlot, clone as CloneCode, treatment, bay_code as BayCode
from plot
where trial_code = @trialCode
order by plot_code
