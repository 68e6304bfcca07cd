update outbox set published_at = null
where type = @type and published_at is not null
  and not exists (select 1 from inbox where inbox.message_id = outbox.message_id and inbox.consumer = @consumer)
  and not exists (select 1 from parked_message p where p.message_id = outbox.message_id and p.endpoint = @consumer and p.replayed_at is null)
