select l.trial_code as TrialCode, l.pull_no as PullNo, l.due_on as DueOn, l.opens_on as OpensOn, l.closes_on as ClosesOn, t.time_zone as TimeZone
from pull l
join trial t on t.trial_code = l.trial_code
order by l.trial_code, l.pull_no
