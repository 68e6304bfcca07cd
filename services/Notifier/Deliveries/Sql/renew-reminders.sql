update delivery
set state = 'pending', attempts = 0, digest_id = null, delivered_at = null,
    due_at = case when urgency = 0 then @now else @quietUntil end, next_attempt_at = case when urgency = 0 then @now else @quietUntil end
where channel = @channel and event = 'reminder' and state = 'delivered' and delivered_at <= @remindBefore and exists (
    select 1 from qc_alert a
    where a.alert_id = delivery.alert_id and a.times_raised = delivery.times_raised and a.state = 'open' and a.acknowledged_at is null)
