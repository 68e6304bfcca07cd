create table parked_message (
    parked_id    integer not null primary key autoincrement,
    message_id   text not null,
    endpoint     text not null,
    type         text not null,
    body         text not null,
    reason       text not null,
    times_parked integer not null,
    parked_at    text not null,
    replayed_at  text,
    unique (message_id, endpoint)
);
create index ix_parked_message_waiting on parked_message (endpoint) where replayed_at is null;
