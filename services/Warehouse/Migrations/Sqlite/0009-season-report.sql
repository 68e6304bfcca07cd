create table season_report (
    trial_code      text not null references trial (trial_code),
    version         integer not null,
    locked_at       text not null,
    locked_by       text not null,
    last_reading_id integer not null,
    last_change_id  integer not null,
    plan_sha256     text not null,
    software        text not null,
    data_sha256     text not null,
    page_sha256     text not null,
    data            text not null,
    primary key (trial_code, version)
);
