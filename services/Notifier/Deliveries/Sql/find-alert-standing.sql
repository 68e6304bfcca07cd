select level, state, times_raised as TimesRaised from qc_alert where alert_id = @alertId
