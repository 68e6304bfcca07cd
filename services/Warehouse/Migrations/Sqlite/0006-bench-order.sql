-- The newest draw of a trial, pull and kind is in effect; older ones stay as they were.
create table bench_order (
    trial_code text not null,
    pull_no    integer not null,
    kind       text not null check (kind in ('analysis', 'frying')),
    draw_no    integer not null,
    seed       integer not null,
    made_at    text not null,
    made_by    text not null,
    why        text not null,
    primary key (trial_code, pull_no, kind, draw_no),
    foreign key (trial_code, pull_no) references pull (trial_code, pull_no)
);

create table bench_place (
    trial_code text not null,
    pull_no    integer not null,
    kind       text not null,
    draw_no    integer not null,
    position   integer not null,
    barcode    text not null references sample (barcode),
    primary key (trial_code, pull_no, kind, draw_no, position),
    unique (trial_code, pull_no, kind, draw_no, barcode),
    foreign key (trial_code, pull_no, kind, draw_no) references bench_order (trial_code, pull_no, kind, draw_no)
);
create index ix_bench_place_barcode on bench_place (barcode);
