-- A row key that is a plain whole number is kept as a number: shorter, and rising with the file instead of jumping about in the index
-- as its text does. A column without a type keeps each value as it comes; v_reading shows text as before.
drop view v_reading;

create table reading_new (
    reading_id     integer not null primary key,
    run_id         integer not null,
    row_key        not null,
    quantity_id    integer not null,
    barcode        text not null,
    value          numeric not null,
    below_limit    integer not null,
    raw_value      text not null,
    raw_unit       text not null,
    extract        text,
    replicate      integer,
    tuber          integer,
    slice          integer,
    operator       text,
    measured_at    text,
    measured_as    text,
    file_id        integer not null,
    line           integer not null,
    standing       integer not null
);
insert into reading_new (reading_id, run_id, row_key, quantity_id, barcode, value, below_limit, raw_value, raw_unit, extract, replicate, tuber, slice, operator, measured_at, measured_as, file_id, line, standing)
select reading_id, run_id,
       case when row_key not glob '*[^0-9]*' and length(row_key) between 1 and 18 and (row_key = '0' or row_key not glob '0*')
            then cast(row_key as integer) else row_key end,
       quantity_id, barcode, value, below_limit, raw_value, raw_unit, extract, replicate, tuber, slice, operator, measured_at, measured_as, file_id, line, standing
from reading;

drop table reading;
-- The other views name the table just dropped; a rename that looks into them would stop at that.
pragma legacy_alter_table = on;
alter table reading_new rename to reading;
pragma legacy_alter_table = off;
create unique index ux_reading_key on reading (run_id, row_key, quantity_id) where standing in (0, 3);
create index ix_reading_contested on reading (run_id, row_key, quantity_id) where standing = 1;
create index ix_reading_barcode on reading (barcode);

create view v_reading as
select r.reading_id, r.barcode, s.trial_code, s.pull_no, s.plot_code, p.block, p.clone, p.treatment,
       q.name as quantity, r.value, q.unit, r.below_limit, r.raw_value, r.raw_unit,
       r.extract, r.replicate, r.tuber, r.slice,
       u.instrument, u.run, cast(r.row_key as text) as row_key, f.method, r.operator,
       r.measured_at as measured_at_utc, r.measured_as as measured_as_written,
       f.name as file_name, f.sha256 as file_sha256, r.line as file_line,
       case r.standing when 0 then 'in effect' when 1 then 'contested' when 2 then 'superseded'
                       when 3 then 'set aside' else 'taken out' end as standing,
       case when d.reading_id is null then 0 else 1 end as in_doubt, d.cause as doubt_cause,
       x.why as excluded_why, x.excluded_by
from reading r
join quantity q on q.quantity_id = r.quantity_id
join instrument_run u on u.run_id = r.run_id
join source_file f on f.file_id = r.file_id
left join reading_doubt d on d.reading_id = r.reading_id
left join reading_exclusion x on x.reading_id = r.reading_id
left join sample s on s.barcode = r.barcode
left join plot p on p.trial_code = s.trial_code and p.plot_code = s.plot_code;
