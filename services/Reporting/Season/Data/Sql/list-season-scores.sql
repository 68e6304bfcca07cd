select s.plot_code as PlotCode, s.pull_no as PullNo, r.value as Score, count(*) as Chips
from reading r
join sample s on s.barcode = r.barcode
where s.trial_code = @trialCode and r.standing = 0 and r.quantity_id = @scoreId
group by s.plot_code, s.pull_no, r.value
order by s.pull_no, s.plot_code, r.value
