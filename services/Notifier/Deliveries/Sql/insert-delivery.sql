insert into delivery (alert_id, times_raised, event, channel, urgency, state, attempts, due_at, next_attempt_at, digest_id, last_error, created_at)
select @AlertId, @TimesRaised, @Event, @Channel, @Urgency, @State, 0, @DueAt, @DueAt, @DigestId, @Reason, @CreatedAt
where not exists (select 1 from delivery where alert_id = @AlertId and times_raised = @TimesRaised and event = @Event and channel = @Channel)
