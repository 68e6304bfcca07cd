select t.trial_code as TrialCode, l.pull_no as PullNo
from trial t
left join pull l on l.trial_code = t.trial_code
order by t.trial_code, l.pull_no
