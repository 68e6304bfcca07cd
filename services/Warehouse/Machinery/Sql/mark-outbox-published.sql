update outbox set published_at = @at where position in @positions
