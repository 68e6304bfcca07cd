update lease set holder = @holder, expires_at = @expires where name = @name and (holder = @holder or expires_at <= @now)
