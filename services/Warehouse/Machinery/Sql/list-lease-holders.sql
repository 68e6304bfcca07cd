select distinct holder from lease where expires_at > @now
