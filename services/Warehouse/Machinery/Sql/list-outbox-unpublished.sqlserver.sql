select top (@most) position, message_id as MessageId, type, body from outbox where published_at is null and type in @types order by position
