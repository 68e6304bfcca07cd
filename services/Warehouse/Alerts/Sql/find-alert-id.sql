select alert_id from qc_alert where fingerprint = @Fingerprint
