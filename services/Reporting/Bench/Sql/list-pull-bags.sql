select s.barcode, p.plot_code as PlotCode, p.block, p.bay_code as BayCode, p.clone as CloneName, p.treatment
from sample s
join plot p on p.trial_code = s.trial_code and p.plot_code = s.plot_code
where s.trial_code = @TrialCode and s.pull_no = @PullNo
order by s.running_no
