select min(d.due_at) as OldestDueAt, min(d.urgency) as MostUrgent from delivery d
where d.channel = @channel and d.state = 'pending' and d.digest_id is null and d.next_attempt_at <= @now
  and (d.event <> 'cleared' or exists (
      select 1 from delivery r
      where r.alert_id = d.alert_id and r.times_raised = d.times_raised and r.event = 'raised' and r.channel = d.channel
        and r.state = 'delivered'))
