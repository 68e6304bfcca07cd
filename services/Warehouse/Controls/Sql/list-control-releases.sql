select instrument, run, controls, released_at as ReleasedAt, released_by as ReleasedBy, why
from control_release
where instrument = @instrument and run = @run
order by release_id
