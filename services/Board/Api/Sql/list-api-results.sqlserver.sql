select r.barcode as Barcode, s.trial_code as Trial, s.pull_no as Pull, l.due_on as PullDueOn, s.plot_code as Plot, p.block as Block,
       p.clone as CloneName, p.treatment as Treatment, p.bay_code as Bay, q.name as Quantity, r.value as Value, q.unit as Unit,
       r.below_limit as BelowLimit, r.in_doubt as InDoubt, r.n as N, r.s as S, r.basis as Basis, r.computed_at as ComputedAt
from sample_result r
join sample s on s.barcode = r.barcode
join plot p on p.trial_code = s.trial_code and p.plot_code = s.plot_code
join pull l on l.trial_code = s.trial_code and l.pull_no = s.pull_no
join quantity q on q.quantity_id = r.quantity_id
where (@Trial is null or s.trial_code = @Trial) and (@Pull is null or s.pull_no = @Pull) and (@Quantity is null or q.name = @Quantity)
order by r.barcode, r.quantity_id
offset @Skip rows fetch next @Size rows only
