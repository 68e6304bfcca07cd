select instrument, material, quantity_id as QuantityId, version, kind, centre, sigma, lower, upper, runs, from_runs as FromRuns,
       in_force_from as InForceFrom, decided_at as DecidedAt, decided_by as DecidedBy, why
from control_limit
order by instrument, material, quantity_id, version
