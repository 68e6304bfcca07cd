create table outbox (
    position     int identity(1, 1) not null primary key,
    message_id   uniqueidentifier not null unique,
    type         nvarchar(200) collate Latin1_General_BIN2 not null,
    body         nvarchar(max) collate Latin1_General_BIN2 not null,
    created_at   datetimeoffset(3) not null,
    published_at datetimeoffset(3)
);
create index ix_outbox_unpublished on outbox (position) where published_at is null;

create table inbox (
    message_id uniqueidentifier not null,
    consumer   nvarchar(128) collate Latin1_General_BIN2 not null,
    handled_at datetimeoffset(3) not null,
    primary key (message_id, consumer)
);

create table lease (
    name       nvarchar(260) collate Latin1_General_BIN2 not null primary key,
    holder     nvarchar(128) collate Latin1_General_BIN2 not null,
    expires_at datetimeoffset(3) not null
);

create table heartbeat (
    service      nvarchar(128) collate Latin1_General_BIN2 not null primary key,
    started_at   datetimeoffset(3) not null,
    beat_at      datetimeoffset(3) not null,
    caught_up_at datetimeoffset(3),
    waiting      int not null
);

create table change_log (
    change_id int identity(1, 1) not null primary key,
    at        datetimeoffset(3) not null,
    who       nvarchar(128) collate Latin1_General_BIN2 not null,
    what      nvarchar(200) collate Latin1_General_BIN2 not null,
    subject   nvarchar(300) collate Latin1_General_BIN2 not null,
    why       nvarchar(1000) collate Latin1_General_BIN2 not null
);
create index ix_change_log_subject on change_log (subject);
