-- The channels the running notifier has, written down at its start so that other programs know what can be told.
create table notice_channel (
    name     nvarchar(64) collate Latin1_General_BIN2 not null primary key,
    levels   nvarchar(64) collate Latin1_General_BIN2 not null,
    noted_at datetimeoffset(3) not null
);

-- Somebody wants to know whether a channel works; the notifier answers.
create table channel_test (
    test_id  int identity(1, 1) not null primary key,
    channel  nvarchar(64) collate Latin1_General_BIN2 not null,
    asked_at datetimeoffset(3) not null,
    asked_by nvarchar(128) collate Latin1_General_BIN2 not null,
    state    nvarchar(16) collate Latin1_General_BIN2 not null check (state in ('waiting', 'delivered', 'failed')),
    ended_at datetimeoffset(3),
    reason   nvarchar(1000) collate Latin1_General_BIN2
);
create index ix_channel_test_waiting on channel_test (channel) where state = 'waiting';
