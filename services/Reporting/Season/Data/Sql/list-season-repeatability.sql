select quantity_id as QuantityId, version as Version, constant as Constant, relative as Relative, pairs as Pairs, provisional as Provisional, source as Source
from repeatability
order by quantity_id, version
