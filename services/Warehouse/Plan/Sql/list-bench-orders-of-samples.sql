select o.trial_code as TrialCode, o.pull_no as PullNo, o.kind, o.draw_no as DrawNo, o.seed, o.made_at as MadeAt, o.made_by as MadeBy, o.why
from bench_order o
where o.kind = @kind
  and o.draw_no = (select max(newest.draw_no) from bench_order newest
                   where newest.trial_code = o.trial_code and newest.pull_no = o.pull_no and newest.kind = o.kind)
  and exists (select 1 from bench_place p
              where p.trial_code = o.trial_code and p.pull_no = o.pull_no and p.kind = o.kind and p.draw_no = o.draw_no and p.barcode in @barcodes)
order by o.trial_code, o.pull_no
