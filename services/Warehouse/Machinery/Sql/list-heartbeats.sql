select service, started_at as StartedAt, beat_at as BeatAt, caught_up_at as CaughtUpAt, waiting from heartbeat order by service
