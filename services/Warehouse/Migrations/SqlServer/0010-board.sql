create table board_user (
    user_id       int identity(1, 1) not null primary key,
    name          nvarchar(64) collate Latin1_General_BIN2 not null unique,
    role          nvarchar(16) collate Latin1_General_BIN2 not null check (role in ('look', 'bench', 'manage', 'administer')),
    password_hash nvarchar(256) collate Latin1_General_BIN2 not null,
    stamp         nvarchar(64) collate Latin1_General_BIN2 not null,
    failures      int not null,
    locked_until  datetimeoffset(3),
    closed        bit not null,
    made_at       datetimeoffset(3) not null
);

create table board_key (
    key_id   int identity(1, 1) not null primary key,
    name     nvarchar(64) collate Latin1_General_BIN2 not null unique,
    key_hash nvarchar(64) collate Latin1_General_BIN2 not null unique,
    made_at  datetimeoffset(3) not null,
    made_by  nvarchar(128) collate Latin1_General_BIN2 not null,
    ended_at datetimeoffset(3)
);

create table board_entry (
    entry_id  nvarchar(36) collate Latin1_General_BIN2 not null primary key,
    sheet     nvarchar(32) collate Latin1_General_BIN2 not null,
    file_name nvarchar(128) collate Latin1_General_BIN2 not null,
    user_name nvarchar(64) collate Latin1_General_BIN2 not null,
    taken_at  datetimeoffset(3) not null
);

-- The board asks twice a second how far evaluation has come.
create index ix_inbox_handled on inbox (handled_at);
