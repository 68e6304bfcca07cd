select p.bay_code as BayCode, s.plot_code as PlotCode, p.clone as CloneName, p.treatment as Treatment, s.barcode as Barcode,
       e.quantity_id as QuantityId, e.readings as Expected,
       (select count(*) from reading r where r.barcode = s.barcode and r.quantity_id = e.quantity_id and r.standing = 0) as Readings
from sample s
join plot p on p.trial_code = s.trial_code and p.plot_code = s.plot_code
join expected_measurement e on e.trial_code = s.trial_code and e.pull_no = s.pull_no
where s.trial_code = @trialCode and s.pull_no = @pullNo
order by p.bay_code, s.plot_code, e.quantity_id
