-- The newest draw of a trial, pull and kind is in effect; older ones stay as they were.
create table bench_order (
    trial_code varchar(32) not null,
    pull_no    int not null,
    kind       varchar(16) not null check (kind in ('analysis', 'frying')),
    draw_no    int not null,
    seed       bigint not null,
    made_at    datetimeoffset(3) not null,
    made_by    nvarchar(128) not null,
    why        nvarchar(1000) not null,
    primary key (trial_code, pull_no, kind, draw_no),
    foreign key (trial_code, pull_no) references pull (trial_code, pull_no)
);

create table bench_place (
    trial_code varchar(32) not null,
    pull_no    int not null,
    kind       varchar(16) not null,
    draw_no    int not null,
    position   int not null,
    barcode    varchar(32) not null references sample (barcode),
    primary key (trial_code, pull_no, kind, draw_no, position),
    unique (trial_code, pull_no, kind, draw_no, barcode),
    foreign key (trial_code, pull_no, kind, draw_no) references bench_order (trial_code, pull_no, kind, draw_no)
);
create index ix_bench_place_barcode on bench_place (barcode);
