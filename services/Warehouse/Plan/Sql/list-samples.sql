select barcode, trial_code as TrialCode, plot_code as PlotCode, pull_no as PullNo, running_no as RunningNo
from sample
where trial_code = @trialCode
order by running_no
