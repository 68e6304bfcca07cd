insert into inbox (message_id, consumer, handled_at)
select @messageId, @consumer, @at
where not exists (select 1 from inbox where message_id = @messageId and consumer = @consumer)
