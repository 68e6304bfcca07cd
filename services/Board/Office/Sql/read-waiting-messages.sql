select (select count(*) from outbox where published_at is null) as Unpublished,
       (select min(created_at) from outbox where published_at is null) as OldestAt,
       (select count(*) from parked_message where replayed_at is null) as Parked
