-- One row a coefficient; means without a row count 0.
create table planned_contrast (
    trial_code  nvarchar(32) collate Latin1_General_BIN2 not null references trial (trial_code),
    name        nvarchar(64) collate Latin1_General_BIN2 not null,
    factors     nvarchar(200) collate Latin1_General_BIN2 not null,
    cell        nvarchar(200) collate Latin1_General_BIN2 not null,
    coefficient decimal(28, 12) not null,
    position    int not null,
    stated_at   datetimeoffset(3) not null,
    primary key (trial_code, name, cell)
);
