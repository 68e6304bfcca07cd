create table board_user (
    user_id       int identity(1, 1) not null primary key,
    name          varchar(64) not null unique,
    role          varchar(16) not null check (role in ('look', 'bench', 'manage', 'administer')),
    password_hash varchar(256) not null,
    stamp         varchar(64) not null,
    failures      int not null,
    locked_until  datetimeoffset(3),
    closed        bit not null,
    made_at       datetimeoffset(3) not null
);

create table board_key (
    key_id   int identity(1, 1) not null primary key,
    name     varchar(64) not null unique,
    key_hash char(64) not null unique,
    made_at  datetimeoffset(3) not null,
    made_by  nvarchar(128) not null,
    ended_at datetimeoffset(3)
);

create table board_entry (
    entry_id  char(36) not null primary key,
    sheet     varchar(32) not null,
    file_name varchar(128) not null,
    user_name varchar(64) not null,
    taken_at  datetimeoffset(3) not null
);

-- The board asks twice a second how far evaluation has come.
create index ix_inbox_handled on inbox (handled_at);
