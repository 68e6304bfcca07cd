insert into plot (trial_code, plot_code, block, main_plot, clone, treatment, bay_code)
values (@TrialCode, @PlotCode, @Block, @MainPlot, @CloneCode, @Treatment, @BayCode)
