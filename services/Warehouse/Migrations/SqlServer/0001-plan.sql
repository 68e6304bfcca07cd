create table trial (
    trial_code          varchar(32) not null primary key,
    title               nvarchar(200) not null,
    question            nvarchar(1000) not null,
    season              int not null,
    mark                varchar(3) not null,
    site                nvarchar(200) not null,
    design              varchar(32) not null,
    clone_factor        nvarchar(64) not null,
    main_plot_factor    nvarchar(64),
    incomplete_reason   nvarchar(1000),
    harvested_on        date not null,
    time_zone           varchar(64) not null,
    standard_clone      nvarchar(64) not null,
    tubers_per_sample   int not null,
    slices_per_tuber    int not null,
    extracts_per_sample int not null,
    dry_matter_relation varchar(64) not null,
    dark_below_hunter_l decimal(28, 12) not null,
    severe_from_score   int not null,
    plan_sha256         char(64) not null,
    loaded_at           datetimeoffset(3) not null
);
create unique index ux_trial_mark on trial (season, mark);

create table factor_level (
    trial_code varchar(32) not null references trial (trial_code),
    factor     nvarchar(64) not null,
    level      nvarchar(64) not null,
    unit       nvarchar(16),
    position   int not null,
    primary key (trial_code, factor, level)
);

create table bay (
    trial_code  varchar(32) not null references trial (trial_code),
    bay_code    nvarchar(32) not null,
    set_point_c decimal(28, 12),
    primary key (trial_code, bay_code)
);

create table plot (
    trial_code varchar(32) not null references trial (trial_code),
    plot_code  nvarchar(32) not null,
    block      nvarchar(32) not null,
    main_plot  nvarchar(32),
    clone      nvarchar(64) not null,
    treatment  nvarchar(200) not null,
    bay_code   nvarchar(32) not null,
    primary key (trial_code, plot_code),
    foreign key (trial_code, bay_code) references bay (trial_code, bay_code)
);

create table plot_level (
    trial_code varchar(32) not null,
    plot_code  nvarchar(32) not null,
    factor     nvarchar(64) not null,
    level      nvarchar(64) not null,
    primary key (trial_code, plot_code, factor),
    foreign key (trial_code, plot_code) references plot (trial_code, plot_code),
    foreign key (trial_code, factor, level) references factor_level (trial_code, factor, level)
);

create table pull (
    trial_code varchar(32) not null references trial (trial_code),
    pull_no    int not null,
    due_on     date not null,
    opens_on   date not null,
    closes_on  date not null,
    primary key (trial_code, pull_no)
);

create table sample (
    barcode    varchar(32) not null primary key,
    trial_code varchar(32) not null,
    plot_code  nvarchar(32) not null,
    pull_no    int not null,
    running_no int not null,
    foreign key (trial_code, plot_code) references plot (trial_code, plot_code),
    foreign key (trial_code, pull_no) references pull (trial_code, pull_no)
);
create unique index ux_sample_plot_pull on sample (trial_code, pull_no, plot_code);

create table quantity (
    quantity_id smallint not null primary key,
    name        nvarchar(260) not null unique,
    unit        nvarchar(16) not null,
    description nvarchar(400) not null
);

create table expected_measurement (
    trial_code  varchar(32) not null,
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
    source      nvarchar(200) not null,
    kept_at     datetimeoffset(3) not null,
    kept_by     nvarchar(128) not null,
    primary key (quantity_id, version)
);
