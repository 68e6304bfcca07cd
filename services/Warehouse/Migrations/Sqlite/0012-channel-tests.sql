-- The channels the running notifier has, written down at its start so that other programs know what can be told.
create table notice_channel (
    name     text not null primary key,
    levels   text not null,
    noted_at text not null
);

-- Somebody wants to know whether a channel works; the notifier answers.
create table channel_test (
    test_id  integer not null primary key,
    channel  text not null,
    asked_at text not null,
    asked_by text not null,
    state    text not null check (state in ('waiting', 'delivered', 'failed')),
    ended_at text,
    reason   text
);
create index ix_channel_test_waiting on channel_test (channel) where state = 'waiting';
