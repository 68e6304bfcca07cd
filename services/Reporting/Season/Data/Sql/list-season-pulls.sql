select pull_no as PullNo, due_on as DueOn, opens_on as OpensOn, closes_on as ClosesOn
from pull
where trial_code = @trialCode
order by pull_no
