select s.barcode as Barcode, s.plot_code as PlotCode, s.pull_no as PullNo, count(r.reading_id) as Readings,
       min(r.measured_at) as FirstMeasured, max(r.measured_at) as LastMeasured
from sample s
left join reading r on r.barcode = s.barcode and r.standing = 0
where s.trial_code = @trialCode
group by s.barcode, s.plot_code, s.pull_no
order by s.pull_no, s.plot_code
