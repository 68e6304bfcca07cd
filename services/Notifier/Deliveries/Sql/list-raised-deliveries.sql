select delivery_id as DeliveryId, channel, urgency, state, attempts from delivery
where alert_id = @alertId and times_raised = @timesRaised and event = 'raised'
order by delivery_id
