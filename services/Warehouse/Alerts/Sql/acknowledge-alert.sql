update qc_alert set acknowledged_at = @At, acknowledged_by = @Who
where alert_id = @alertId and state = 'open' and acknowledged_at is null
