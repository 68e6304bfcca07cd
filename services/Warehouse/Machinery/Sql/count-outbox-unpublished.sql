select count(*) from outbox where published_at is null
