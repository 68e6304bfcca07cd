select trial_code as TrialCode, pull_no as PullNo, kind, draw_no as DrawNo, seed, made_at as MadeAt, made_by as MadeBy, why
from bench_order
where trial_code = @trialCode and pull_no = @pullNo and kind = @kind
order by draw_no
