select p.plot_code as PlotCode, p.block, p.main_plot as MainPlot, s.pull_no as PullNo, avg(r.value) as Value, max(case when r.below_limit = 1 then 1 else 0 end) as BelowLimit
from sample_result r
join sample s on s.barcode = r.barcode
join plot p on p.trial_code = s.trial_code and p.plot_code = s.plot_code
where s.trial_code = @trialCode and r.quantity_id = @quantityId
group by p.plot_code, p.block, p.main_plot, s.pull_no
order by s.pull_no, p.plot_code
