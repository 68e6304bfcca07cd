update delivery set state = 'held back', last_error = @reason
where event = 'cleared' and state = 'pending' and exists (
    select 1 from delivery r
    where r.alert_id = delivery.alert_id and r.times_raised = delivery.times_raised and r.event = 'raised' and r.channel = delivery.channel
      and r.state in ('failed', 'held back'))
