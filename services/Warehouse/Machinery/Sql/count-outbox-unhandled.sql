select count(*) from outbox
where type = @type
  and not exists (select 1 from inbox where inbox.message_id = outbox.message_id and inbox.consumer = @consumer)
