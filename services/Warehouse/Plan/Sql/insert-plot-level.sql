insert into plot_level (trial_code, plot_code, factor, level) values (@TrialCode, @PlotCode, @Factor, @Level)
