update outbox set published_at = null where message_id = @id
