insert into control_release (instrument, run, controls, released_at, released_by, why)
values (@Instrument, @Run, @Controls, @ReleasedAt, @ReleasedBy, @Why)
