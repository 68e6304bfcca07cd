create table parked_message (
    parked_id    int identity(1, 1) not null primary key,
    message_id   uniqueidentifier not null,
    endpoint     nvarchar(128) collate Latin1_General_BIN2 not null,
    type         nvarchar(200) collate Latin1_General_BIN2 not null,
    body         nvarchar(max) collate Latin1_General_BIN2 not null,
    reason       nvarchar(1000) collate Latin1_General_BIN2 not null,
    times_parked int not null,
    parked_at    datetimeoffset(3) not null,
    replayed_at  datetimeoffset(3),
    constraint uq_parked_message unique (message_id, endpoint)
);
create index ix_parked_message_waiting on parked_message (endpoint) where replayed_at is null;
