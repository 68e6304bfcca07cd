select count(*) from outbox
where type = @type
  and not exists (select 1 from inbox where inbox.message_id = outbox.message_id and inbox.consumer = @consumer)
  and not exists (select 1 from parked_message p where p.message_id = outbox.message_id and p.endpoint = @consumer and p.replayed_at is null)
