select p.position, p.barcode, plot.block, plot.plot_code as PlotCode
from bench_place p
join sample s on s.barcode = p.barcode
join plot on plot.trial_code = s.trial_code and plot.plot_code = s.plot_code
where p.trial_code = @TrialCode and p.pull_no = @PullNo and p.kind = @Kind and p.draw_no = @DrawNo
order by p.position
