insert into outbox (message_id, type, body, created_at)
select @id, @type, @body, @at
where not exists (select 1 from outbox where message_id = @id)
