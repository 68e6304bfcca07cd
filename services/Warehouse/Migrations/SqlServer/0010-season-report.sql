create table season_report (
    trial_code      varchar(32) not null references trial (trial_code),
    version         int not null,
    locked_at       datetimeoffset(3) not null,
    locked_by       nvarchar(128) not null,
    last_reading_id bigint not null,
    last_change_id  bigint not null,
    plan_sha256     char(64) not null,
    software        nvarchar(128) not null,
    data_sha256     char(64) not null,
    page_sha256     char(64) not null,
    data            varchar(max) not null,
    primary key (trial_code, version)
);
