select trial_code as TrialCode, quantity_id as QuantityId, kind, version, value, in_force_from as InForceFrom,
       set_at as SetAt, set_by as SetBy, why
from threshold
order by trial_code, quantity_id, kind, version
