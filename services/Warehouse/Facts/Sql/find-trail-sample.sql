select s.barcode as Barcode, s.trial_code as TrialCode, s.pull_no as PullNo, l.due_on as DueOn, s.plot_code as PlotCode,
       p.block as Block, p.clone as CloneName, p.treatment as Treatment, p.bay_code as BayCode
from sample s
join plot p on p.trial_code = s.trial_code and p.plot_code = s.plot_code
join pull l on l.trial_code = s.trial_code and l.pull_no = s.pull_no
where s.barcode = @barcode
