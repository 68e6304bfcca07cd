create table source_file (
    file_id              integer not null primary key,
    sha256               text not null unique,
    kind                 text not null,
    name                 text not null,
    bytes                integer not null,
    archived_as          text not null,
    taken_at             text not null,
    state                text not null check (state in ('stored', 'refused', 'waiting', 'taken out')),
    reason_code          text,
    reason               text,
    profile              text,
    profile_version      integer,
    method               text,
    method_facts         text,
    row_count            integer not null,
    new_count            integer not null,
    repeated_count       integer not null,
    conflicting_count    integer not null,
    parked_count         integer not null,
    first_reading_id     integer,
    last_reading_id      integer
);

create table arrival (
    arrival_id  integer not null primary key,
    file_id     integer not null references source_file (file_id),
    folder      text not null,
    name        text not null,
    modified_at text not null,
    arrived_at  text not null,
    again       integer not null,
    put_away    integer not null
);
create index ix_arrival_file on arrival (file_id);
create index ix_arrival_name on arrival (folder, name);

create table held_file (
    folder        text not null,
    name          text not null,
    bytes         integer not null,
    reason_code   text not null,
    reason        text not null,
    first_seen_at text not null,
    last_seen_at  text not null,
    primary key (folder, name)
);

create table parked_row (
    file_id integer not null references source_file (file_id),
    line    integer not null,
    reason  text not null,
    primary key (file_id, line)
);

create table instrument_run (
    run_id     integer not null primary key,
    instrument text not null,
    run        text not null,
    unique (instrument, run)
);

-- No foreign keys on the fact tables: the loader writes their parents in the same transaction, and looking three of them up
-- for every row cost a fifth of the load. SQL Server keeps them.
-- standing: 0 in effect, 1 contested, 2 superseded, 3 set aside, 4 taken out with its file
create table reading (
    reading_id     integer not null primary key,
    run_id         integer not null,
    row_key        text not null,
    quantity_id    integer not null,
    barcode        text not null,
    value          numeric not null,
    below_limit    integer not null,
    raw_value      text not null,
    raw_unit       text not null,
    extract        text,
    replicate      integer,
    tuber          integer,
    slice          integer,
    operator       text,
    measured_at    text,
    measured_as    text,
    file_id        integer not null,
    line           integer not null,
    standing       integer not null
);
create unique index ux_reading_key on reading (run_id, row_key, quantity_id) where standing in (0, 3);
create index ix_reading_contested on reading (run_id, row_key, quantity_id) where standing = 1;
create index ix_reading_barcode on reading (barcode);

create table control_check (
    reading_id     integer not null primary key,
    run_id         integer not null,
    row_key        text not null,
    quantity_id    integer not null,
    material       text not null,
    value          numeric not null,
    below_limit    integer not null,
    raw_value      text not null,
    raw_unit       text not null,
    replicate      integer,
    operator       text,
    measured_at    text,
    measured_as    text,
    file_id        integer not null,
    line           integer not null,
    standing       integer not null
);
create unique index ux_control_check_key on control_check (run_id, row_key, quantity_id) where standing in (0, 3);
create index ix_control_check_contested on control_check (run_id, row_key, quantity_id) where standing = 1;
create index ix_control_check_file on control_check (file_id);

create table fry_batch (
    reading_id     integer not null primary key,
    run_id         integer not null,
    row_key        text not null,
    quantity_id    integer not null,
    value          numeric not null,
    raw_value      text not null,
    raw_unit       text not null,
    operator       text,
    measured_at    text,
    measured_as    text,
    file_id        integer not null,
    line           integer not null,
    standing       integer not null
);
create unique index ux_fry_batch_key on fry_batch (run_id, row_key, quantity_id) where standing in (0, 3);
create index ix_fry_batch_contested on fry_batch (run_id, row_key, quantity_id) where standing = 1;
create index ix_fry_batch_file on fry_batch (file_id);
