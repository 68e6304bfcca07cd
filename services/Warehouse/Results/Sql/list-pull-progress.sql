-- What v_pull_progress tells of all trials, for one: its samples' readings are counted once, not once a quantity.
with counted as (
    select s.pull_no, s.barcode, r.quantity_id, count(*) as readings
    from sample s
    join reading r on r.barcode = s.barcode and r.standing = 0
    where s.trial_code = @trialCode
    group by s.pull_no, s.barcode, r.quantity_id),
measured as (
    select c.pull_no, c.quantity_id, count(*) as samples
    from counted c
    join expected_measurement e on e.trial_code = @trialCode and e.pull_no = c.pull_no and e.quantity_id = c.quantity_id and c.readings >= e.readings
    group by c.pull_no, c.quantity_id),
planned as (
    select pull_no, count(*) as samples from sample where trial_code = @trialCode group by pull_no)
select l.pull_no as PullNo, l.due_on as DueOn, l.opens_on as OpensOn, l.closes_on as ClosesOn, q.name as Quantity,
       coalesce(p.samples, 0) as SamplesPlanned, coalesce(m.samples, 0) as SamplesMeasured
from pull l
join expected_measurement e on e.trial_code = l.trial_code and e.pull_no = l.pull_no
join quantity q on q.quantity_id = e.quantity_id
left join planned p on p.pull_no = l.pull_no
left join measured m on m.pull_no = l.pull_no and m.quantity_id = e.quantity_id
where l.trial_code = @trialCode
order by l.pull_no, e.quantity_id
