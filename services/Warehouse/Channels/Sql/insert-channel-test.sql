insert into channel_test (channel, asked_at, asked_by, state)
select @channel, @now, @who, 'waiting'
where not exists (select 1 from channel_test where channel = @channel and state = 'waiting')
