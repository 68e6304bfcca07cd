select p.trial_code as TrialCode, p.pull_no as PullNo, p.due_on as DueOn, p.opens_on as OpensOn, p.closes_on as ClosesOn,
       t.harvested_on as HarvestedOn, t.tubers_per_sample as TubersPerSample, t.time_zone as TimeZone
from pull p
join trial t on t.trial_code = p.trial_code
order by p.opens_on, p.trial_code
