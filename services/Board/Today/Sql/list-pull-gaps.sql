with counted as (
    select r.barcode, r.quantity_id, count(*) as readings
    from sample s
    join reading r on r.barcode = s.barcode and r.standing = 0
    where s.trial_code = @trialCode and s.pull_no = @pullNo
    group by r.barcode, r.quantity_id)
select p.bay_code as BayCode, s.plot_code as PlotCode, p.clone as CloneName, p.treatment as Treatment, s.barcode as Barcode,
       e.quantity_id as QuantityId, e.readings as Expected, coalesce(c.readings, 0) as Readings
from sample s
join plot p on p.trial_code = s.trial_code and p.plot_code = s.plot_code
join expected_measurement e on e.trial_code = s.trial_code and e.pull_no = s.pull_no
left join counted c on c.barcode = s.barcode and c.quantity_id = e.quantity_id
where s.trial_code = @trialCode and s.pull_no = @pullNo
order by p.bay_code, s.plot_code, e.quantity_id
