select s.barcode, s.trial_code as TrialCode, s.pull_no as PullNo, s.plot_code as PlotCode, p.block, p.clone as CloneCode, p.treatment, p.bay_code as BayCode
from sample s
join plot p on p.trial_code = s.trial_code and p.plot_code = s.plot_code
where s.barcode in @barcodes
order by s.barcode
