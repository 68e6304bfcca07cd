create table trial (
    trial_code          nvarchar(32) collate Latin1_General_BIN2 not null primary key,
    title               nvarchar(200) collate Latin1_General_BIN2 not null,
    question            nvarchar(1000) collate Latin1_General_BIN2 not null,
    season              int not null,
    mark                nvarchar(3) collate Latin1_General_BIN2 not null,
    site                nvarchar(200) collate Latin1_General_BIN2 not null,
    design              nvarchar(32) collate Latin1_General_BIN2 not null,
    clone_factor        nvarchar(64) collate Latin1_General_BIN2 not null,
    main_plot_factor    nvarchar(64) collate Latin1_General_BIN2,
    incomplete_reason   nvarchar(1000) collate Latin1_General_BIN2,
    harvested_on        date not null,
    time_zone           nvarchar(64) collate Latin1_General_BIN2 not null,
    standard_clone      nvarchar(64) collate Latin1_General_BIN2 not null,
    tubers_per_sample   int not null,
    slices_per_tuber    int not null,
    extracts_per_sample int not null,
    dry_matter_relation nvarchar(64) collate Latin1_General_BIN2 not null,
    dark_below_hunter_l decimal(28, 12) not null,
    severe_from_score   int not null,
    plan_sha256         nvarchar(64) collate Latin1_General_BIN2 not null,
    loaded_at           datetimeoffset(3) not null
);
create unique index ux_trial_mark on trial (season, mark);

create table factor_level (
    trial_code nvarchar(32) collate Latin1_General_BIN2 not null references trial (trial_code),
    factor     nvarchar(64) collate Latin1_General_BIN2 not null,
    level      nvarchar(64) collate Latin1_General_BIN2 not null,
    unit       nvarchar(16) collate Latin1_General_BIN2,
    position   int not null,
    primary key (trial_code, factor, level)
);

create table bay (
    trial_code  nvarchar(32) collate Latin1_General_BIN2 not null references trial (trial_code),
    bay_code    nvarchar(32) collate Latin1_General_BIN2 not null,
    set_point_c decimal(28, 12),
    primary key (trial_code, bay_code)
);

create table plot (
    trial_code nvarchar(32) collate Latin1_General_BIN2 not null references trial (trial_code),
    plot_code  nvarchar(32) collate Latin1_General_BIN2 not null,
    block      nvarchar(32) collate Latin1_General_BIN2 not null,
    main_plot  nvarchar(32) collate Latin1_General_BIN2,
    clone      nvarchar(64) collate Latin1_General_BIN2 not null,
    treatment  nvarchar(200) collate Latin1_General_BIN2 not null,
    bay_code   nvarchar(32) collate Latin1_General_BIN2 not null,
    primary key (trial_code, plot_code),
    foreign key (trial_code, bay_code) references bay (trial_code, bay_code)
);

create table plot_level (
    trial_code nvarchar(32) collate Latin1_General_BIN2 not null,
    plot_code  nvarchar(32) collate Latin1_General_BIN2 not null,
    factor     nvarchar(64) collate Latin1_General_BIN2 not null,
    level      nvarchar(64) collate Latin1_General_BIN2 not null,
    primary key (trial_code, plot_code, factor),
    foreign key (trial_code, plot_code) references plot (trial_code, plot_code),
    foreign key (trial_code, factor, level) references factor_level (trial_code, factor, level)
);

create table pull (
    trial_code nvarchar(32) collate Latin1_General_BIN2 not null references trial (trial_code),
    pull_no    int not null,
    due_on     date not null,
    opens_on   date not null,
    closes_on  date not null,
    primary key (trial_code, pull_no)
);

create table sample (
    barcode    nvarchar(32) collate Latin1_General_BIN2 not null primary key,
    trial_code nvarchar(32) collate Latin1_General_BIN2 not null,
    plot_code  nvarchar(32) collate Latin1_General_BIN2 not null,
    pull_no    int not null,
    running_no int not null,
    foreign key (trial_code, plot_code) references plot (trial_code, plot_code),
    foreign key (trial_code, pull_no) references pull (trial_code, pull_no)
);
create unique index ux_sample_plot_pull on sample (trial_code, pull_no, plot_code);

create table quantity (
    quantity_id smallint not null primary key,
    name        nvarchar(260) collate Latin1_General_BIN2 not null unique,
    unit        nvarchar(16) collate Latin1_General_BIN2 not null,
    description nvarchar(400) collate Latin1_General_BIN2 not null
);

create table expected_measurement (
    trial_code  nvarchar(32) collate Latin1_General_BIN2 not null,
    pull_no     int not null,
    quantity_id smallint not null references quantity (quantity_id),
    readings    int not null,
    primary key (trial_code, pull_no, quantity_id),
    foreign key (trial_code, pull_no) references pull (trial_code, pull_no)
);

create table repeatability (
    quantity_id smallint not null references quantity (quantity_id),
    version     int not null,
    constant    decimal(28, 12) not null,
    relative    decimal(28, 12) not null,
    pairs       int not null,
    provisional bit not null,
    source      nvarchar(200) collate Latin1_General_BIN2 not null,
    kept_at     datetimeoffset(3) not null,
    kept_by     nvarchar(128) collate Latin1_General_BIN2 not null,
    primary key (quantity_id, version)
);
