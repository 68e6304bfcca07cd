create table trial (
    trial_code          text not null primary key,
    title               text not null,
    question            text not null,
    season              integer not null,
    mark                text not null,
    site                text not null,
    design              text not null,
    clone_factor        text not null,
    main_plot_factor    text,
    incomplete_reason   text,
    harvested_on        text not null,
    time_zone           text not null,
    standard_clone      text not null,
    tubers_per_sample   integer not null,
    slices_per_tuber    integer not null,
    extracts_per_sample integer not null,
    dry_matter_relation text not null,
    dark_below_hunter_l numeric not null,
    severe_from_score   integer not null,
    plan_sha256         text not null,
    loaded_at           text not null
);
create unique index ux_trial_mark on trial (season, mark);

create table factor_level (
    trial_code text not null references trial (trial_code),
    factor     text not null,
    level      text not null,
    unit       text,
    position   integer not null,
    primary key (trial_code, factor, level)
);

create table bay (
    trial_code  text not null references trial (trial_code),
    bay_code    text not null,
    set_point_c numeric,
    primary key (trial_code, bay_code)
);

create table plot (
    trial_code text not null references trial (trial_code),
    plot_code  text not null,
    block      text not null,
    main_plot  text,
    clone      text not null,
    treatment  text not null,
    bay_code   text not null,
    primary key (trial_code, plot_code),
    foreign key (trial_code, bay_code) references bay (trial_code, bay_code)
);

create table plot_level (
    trial_code text not null,
    plot_code  text not null,
    factor     text not null,
    level      text not null,
    primary key (trial_code, plot_code, factor),
    foreign key (trial_code, plot_code) references plot (trial_code, plot_code),
    foreign key (trial_code, factor, level) references factor_level (trial_code, factor, level)
);

create table pull (
    trial_code text not null references trial (trial_code),
    pull_no    integer not null,
    due_on     text not null,
    opens_on   text not null,
    closes_on  text not null,
    primary key (trial_code, pull_no)
);

create table sample (
    barcode    text not null primary key,
    trial_code text not null,
    plot_code  text not null,
    pull_no    integer not null,
    running_no integer not null,
    foreign key (trial_code, plot_code) references plot (trial_code, plot_code),
    foreign key (trial_code, pull_no) references pull (trial_code, pull_no)
);
create unique index ux_sample_plot_pull on sample (trial_code, pull_no, plot_code);

create table quantity (
    quantity_id integer not null primary key,
    name        text not null unique,
    unit        text not null,
    description text not null
);

create table expected_measurement (
    trial_code  text not null,
    pull_no     integer not null,
    quantity_id integer not null references quantity (quantity_id),
    readings    integer not null,
    primary key (trial_code, pull_no, quantity_id),
    foreign key (trial_code, pull_no) references pull (trial_code, pull_no)
);

create table repeatability (
    quantity_id integer not null references quantity (quantity_id),
    version     integer not null,
    constant    numeric not null,
    relative    numeric not null,
    pairs       integer not null,
    provisional integer not null,
    source      text not null,
    kept_at     text not null,
    kept_by     text not null,
    primary key (quantity_id, version)
);
