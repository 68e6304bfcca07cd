select x.barcode as Barcode, x.quantity_id as QuantityId, x.value as Value, x.below_limit as BelowLimit, x.n as N, x.s as S, x.basis as Basis,
       x.in_doubt as InDoubt
from sample_result x
join sample s on s.barcode = x.barcode
where s.trial_code = @trialCode
order by x.barcode, x.quantity_id
