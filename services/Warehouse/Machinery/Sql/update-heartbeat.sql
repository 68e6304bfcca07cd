update heartbeat set started_at = @StartedAt, beat_at = @BeatAt, caught_up_at = @CaughtUpAt, waiting = @Waiting where service = @Service
