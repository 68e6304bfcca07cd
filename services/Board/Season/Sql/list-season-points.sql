select p.clone as CloneName, p.treatment as Treatment, s.plot_code as PlotCode, p.block as Block, s.pull_no as PullNo, l.due_on as DueOn,
       t.harvested_on as HarvestedOn, s.barcode as Barcode, r.value as Value, r.below_limit as BelowLimit, r.in_doubt as InDoubt
from sample s
join trial t on t.trial_code = s.trial_code
join plot p on p.trial_code = s.trial_code and p.plot_code = s.plot_code
join pull l on l.trial_code = s.trial_code and l.pull_no = s.pull_no
join sample_result r on r.barcode = s.barcode and r.quantity_id = @quantityId
where s.trial_code = @trialCode
order by p.clone, p.treatment, s.pull_no, s.plot_code
