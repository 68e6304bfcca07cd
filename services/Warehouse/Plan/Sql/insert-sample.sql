insert into sample (barcode, trial_code, plot_code, pull_no, running_no) values (@Barcode, @TrialCode, @PlotCode, @PullNo, @RunningNo)
