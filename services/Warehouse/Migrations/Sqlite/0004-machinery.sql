create table outbox (
    position     integer not null primary key autoincrement,
    message_id   text not null unique,
    type         text not null,
    body         text not null,
    created_at   text not null,
    published_at text
);
create index ix_outbox_unpublished on outbox (position) where published_at is null;

create table inbox (
    message_id text not null,
    consumer   text not null,
    handled_at text not null,
    primary key (message_id, consumer)
);

create table lease (
    name       text not null primary key,
    holder     text not null,
    expires_at text not null
);

create table heartbeat (
    service      text not null primary key,
    started_at   text not null,
    beat_at      text not null,
    caught_up_at text,
    waiting      integer not null
);

create table change_log (
    change_id integer not null primary key,
    at        text not null,
    who       text not null,
    what      text not null,
    subject   text not null,
    why       text not null
);
create index ix_change_log_subject on change_log (subject);
