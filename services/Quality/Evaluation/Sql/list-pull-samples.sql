select s.barcode, s.plot_code as PlotCode, p.block, p.bay_code as BayCode
from sample s
join plot p on p.trial_code = s.trial_code and p.plot_code = s.plot_code
where s.trial_code = @TrialCode and s.pull_no = @PullNo
order by s.plot_code
