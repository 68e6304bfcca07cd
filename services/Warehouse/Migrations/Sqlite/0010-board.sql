create table board_user (
    user_id       integer not null primary key,
    name          text not null unique,
    role          text not null check (role in ('look', 'bench', 'manage', 'administer')),
    password_hash text not null,
    stamp         text not null,
    failures      integer not null,
    locked_until  text,
    closed        integer not null,
    made_at       text not null
);

create table board_key (
    key_id   integer not null primary key,
    name     text not null unique,
    key_hash text not null unique,
    made_at  text not null,
    made_by  text not null,
    ended_at text
);

create table board_entry (
    entry_id  text not null primary key,
    sheet     text not null,
    file_name text not null,
    user_name text not null,
    taken_at  text not null
);

-- The board asks twice a second how far evaluation has come.
create index ix_inbox_handled on inbox (handled_at);
