insert into parked_message (message_id, endpoint, type, body, reason, times_parked, parked_at)
select @MessageId, @Endpoint, @Type, @Body, @Reason, 1, @ParkedAt
where not exists (select 1 from parked_message where message_id = @MessageId and endpoint = @Endpoint)
