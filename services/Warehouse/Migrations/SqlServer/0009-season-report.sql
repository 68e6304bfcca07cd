create table season_report (
    trial_code      nvarchar(32) collate Latin1_General_BIN2 not null references trial (trial_code),
    version         int not null,
    locked_at       datetimeoffset(3) not null,
    locked_by       nvarchar(128) collate Latin1_General_BIN2 not null,
    last_reading_id bigint not null,
    last_change_id  bigint not null,
    plan_sha256     nvarchar(64) collate Latin1_General_BIN2 not null,
    software        nvarchar(128) collate Latin1_General_BIN2 not null,
    data_sha256     nvarchar(64) collate Latin1_General_BIN2 not null,
    page_sha256     nvarchar(64) collate Latin1_General_BIN2 not null,
    data            nvarchar(max) collate Latin1_General_BIN2 not null,
    primary key (trial_code, version)
);
