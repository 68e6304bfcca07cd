select plot_code as PlotCode, block, main_plot as MainPlot, bay_code as BayCode
from plot
where trial_code = @trialCode
order by plot_code
