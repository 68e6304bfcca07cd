select quantity_id as QuantityId, version, constant, relative, pairs, provisional, source, kept_at as KeptAt, kept_by as KeptBy
from repeatability
order by quantity_id, version
