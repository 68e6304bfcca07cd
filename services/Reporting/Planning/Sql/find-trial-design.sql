select design, main_plot_factor as MainPlotFactor from trial where trial_code = @trialCode
