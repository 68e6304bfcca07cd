-- One row a coefficient; means without a row count 0.
create table planned_contrast (
    trial_code  text not null references trial (trial_code),
    name        text not null,
    factors     text not null,
    cell        text not null,
    coefficient real not null,
    position    integer not null,
    stated_at   text not null,
    primary key (trial_code, name, cell)
);
