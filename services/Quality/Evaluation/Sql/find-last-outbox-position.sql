select coalesce(max(position), 0) from outbox
