insert into heartbeat (service, started_at, beat_at, caught_up_at, waiting) values (@Service, @StartedAt, @BeatAt, @CaughtUpAt, @Waiting)
