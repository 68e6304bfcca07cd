create table source_file (
    file_id              int identity(1, 1) not null primary key,
    sha256               nvarchar(64) collate Latin1_General_BIN2 not null unique,
    kind                 nvarchar(32) collate Latin1_General_BIN2 not null,
    name                 nvarchar(260) collate Latin1_General_BIN2 not null,
    bytes                bigint not null,
    archived_as          nvarchar(400) collate Latin1_General_BIN2 not null,
    taken_at             datetimeoffset(3) not null,
    state                nvarchar(16) collate Latin1_General_BIN2 not null check (state in ('stored', 'refused', 'waiting', 'taken out')),
    reason_code          nvarchar(64) collate Latin1_General_BIN2,
    reason               nvarchar(2000) collate Latin1_General_BIN2,
    profile              nvarchar(128) collate Latin1_General_BIN2,
    profile_version      int,
    method               nvarchar(128) collate Latin1_General_BIN2,
    method_facts         nvarchar(max) collate Latin1_General_BIN2,
    row_count            int not null,
    new_count            int not null,
    repeated_count       int not null,
    conflicting_count    int not null,
    parked_count         int not null,
    first_reading_id     bigint,
    last_reading_id      bigint
);

create table arrival (
    arrival_id  int identity(1, 1) not null primary key,
    file_id     int not null references source_file (file_id),
    folder      nvarchar(260) collate Latin1_General_BIN2 not null,
    name        nvarchar(260) collate Latin1_General_BIN2 not null,
    modified_at datetimeoffset(3) not null,
    arrived_at  datetimeoffset(3) not null,
    again       bit not null,
    put_away    bit not null
);
create index ix_arrival_file on arrival (file_id);
create index ix_arrival_name on arrival (folder, name);

create table held_file (
    folder        nvarchar(200) collate Latin1_General_BIN2 not null,
    name          nvarchar(200) collate Latin1_General_BIN2 not null,
    bytes         bigint not null,
    reason_code   nvarchar(64) collate Latin1_General_BIN2 not null,
    reason        nvarchar(2000) collate Latin1_General_BIN2 not null,
    first_seen_at datetimeoffset(3) not null,
    last_seen_at  datetimeoffset(3) not null,
    primary key (folder, name)
);

create table parked_row (
    file_id int not null references source_file (file_id),
    line    int not null,
    reason  nvarchar(2000) collate Latin1_General_BIN2 not null,
    primary key (file_id, line)
);

create table instrument_run (
    run_id     int identity(1, 1) not null primary key,
    instrument nvarchar(64) collate Latin1_General_BIN2 not null,
    run        nvarchar(128) collate Latin1_General_BIN2 not null,
    unique (instrument, run)
);

-- standing: 0 in effect, 1 contested, 2 superseded, 3 set aside, 4 taken out with its file
create table reading (
    reading_id     bigint identity(1, 1) not null primary key,
    run_id         int not null references instrument_run (run_id),
    row_key        nvarchar(200) collate Latin1_General_BIN2 not null,
    quantity_id    smallint not null references quantity (quantity_id),
    barcode        nvarchar(32) collate Latin1_General_BIN2 not null,
    value          decimal(28, 12) not null,
    below_limit    bit not null,
    raw_value      nvarchar(64) collate Latin1_General_BIN2 not null,
    raw_unit       nvarchar(16) collate Latin1_General_BIN2 not null,
    extract        nvarchar(32) collate Latin1_General_BIN2,
    replicate      int,
    tuber          int,
    slice          int,
    operator       nvarchar(128) collate Latin1_General_BIN2,
    measured_at    datetimeoffset(3),
    measured_as    nvarchar(64) collate Latin1_General_BIN2,
    file_id        int not null references source_file (file_id),
    line           int not null,
    standing       tinyint not null
);
create unique index ux_reading_key on reading (run_id, row_key, quantity_id) where standing in (0, 3);
create index ix_reading_contested on reading (run_id, row_key, quantity_id) where standing = 1;
create index ix_reading_barcode on reading (barcode);

create table control_check (
    reading_id     bigint identity(1, 1) not null primary key,
    run_id         int not null references instrument_run (run_id),
    row_key        nvarchar(200) collate Latin1_General_BIN2 not null,
    quantity_id    smallint not null references quantity (quantity_id),
    material       nvarchar(128) collate Latin1_General_BIN2 not null,
    value          decimal(28, 12) not null,
    below_limit    bit not null,
    raw_value      nvarchar(64) collate Latin1_General_BIN2 not null,
    raw_unit       nvarchar(16) collate Latin1_General_BIN2 not null,
    replicate      int,
    operator       nvarchar(128) collate Latin1_General_BIN2,
    measured_at    datetimeoffset(3),
    measured_as    nvarchar(64) collate Latin1_General_BIN2,
    file_id        int not null references source_file (file_id),
    line           int not null,
    standing       tinyint not null
);
create unique index ux_control_check_key on control_check (run_id, row_key, quantity_id) where standing in (0, 3);
create index ix_control_check_contested on control_check (run_id, row_key, quantity_id) where standing = 1;
create index ix_control_check_file on control_check (file_id);

create table fry_batch (
    reading_id     bigint identity(1, 1) not null primary key,
    run_id         int not null references instrument_run (run_id),
    row_key        nvarchar(200) collate Latin1_General_BIN2 not null,
    quantity_id    smallint not null references quantity (quantity_id),
    value          decimal(28, 12) not null,
    raw_value      nvarchar(64) collate Latin1_General_BIN2 not null,
    raw_unit       nvarchar(16) collate Latin1_General_BIN2 not null,
    operator       nvarchar(128) collate Latin1_General_BIN2,
    measured_at    datetimeoffset(3),
    measured_as    nvarchar(64) collate Latin1_General_BIN2,
    file_id        int not null references source_file (file_id),
    line           int not null,
    standing       tinyint not null
);
create unique index ux_fry_batch_key on fry_batch (run_id, row_key, quantity_id) where standing in (0, 3);
create index ix_fry_batch_contested on fry_batch (run_id, row_key, quantity_id) where standing = 1;
create index ix_fry_batch_file on fry_batch (file_id);
