select s.barcode, s.trial_code as TrialCode, s.pull_no as PullNo, s.plot_code as PlotCode, p.block, p.clone as CloneCode, p.treatment, p.bay_code as BayCode,
       case when e.barcode is null then 0 else 1 end as NoMoreExtracts
from sample s
join plot p on p.trial_code = s.trial_code and p.plot_code = s.plot_code
left join extract_end e on e.barcode = s.barcode
where s.barcode in @barcodes
order by s.barcode
