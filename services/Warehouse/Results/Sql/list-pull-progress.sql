select v.pull_no as PullNo, v.due_on as DueOn, v.opens_on as OpensOn, v.closes_on as ClosesOn, v.quantity as Quantity,
       v.samples_planned as SamplesPlanned, v.samples_measured as SamplesMeasured
from v_pull_progress v
join quantity q on q.name = v.quantity
where v.trial_code = @trialCode
order by v.pull_no, q.quantity_id
