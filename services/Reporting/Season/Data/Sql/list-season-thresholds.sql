select t.quantity_id as QuantityId, t.kind as Kind, t.value as Value, t.set_by as SetBy, t.why as Why
from threshold t
where t.trial_code = @trialCode and t.value is not null
  and t.version = (select max(x.version) from threshold x where x.trial_code = t.trial_code and x.quantity_id = t.quantity_id and x.kind = t.kind)
order by t.quantity_id, t.kind
