update qc_alert set state = 'settled', settled_at = @At, settled_by = @Who, settled_why = @Why, changed_at = @At
where alert_id = @alertId and state = 'open'
