-- Limits of control charts: a stated target with its tolerance, or limits frozen from 20 runs or more. Every version is kept.
create table control_limit (
    instrument    nvarchar(128) not null,
    material      nvarchar(128) not null,
    quantity_id   smallint not null references quantity (quantity_id),
    version       int not null,
    kind          varchar(16) not null check (kind in ('target', 'frozen')),
    centre        decimal(28, 12) not null,
    sigma         decimal(28, 12),
    lower         decimal(28, 12) not null,
    upper         decimal(28, 12) not null,
    runs          int not null,
    from_runs     nvarchar(max) not null,
    in_force_from datetimeoffset(3) not null,
    decided_at    datetimeoffset(3) not null,
    decided_by    nvarchar(128) not null,
    why           nvarchar(1000) not null,
    primary key (instrument, material, quantity_id, version)
);

create table control_release (
    release_id  int identity(1, 1) not null primary key,
    instrument  nvarchar(128) not null,
    run         nvarchar(128) not null,
    controls    nvarchar(max) not null,
    released_at datetimeoffset(3) not null,
    released_by nvarchar(128) not null,
    why         nvarchar(1000) not null
);
create index ix_control_release_run on control_release (instrument, run);

-- Derived: readings between a failed control and the next good one, written anew with every judgement of their run.
create table reading_doubt (
    reading_id bigint not null primary key,
    run_id     int not null,
    cause      nvarchar(1000) not null
);
create index ix_reading_doubt_run on reading_doubt (run_id);

create table reading_exclusion (
    reading_id  bigint not null primary key,
    excluded_at datetimeoffset(3) not null,
    excluded_by nvarchar(128) not null,
    why         nvarchar(1000) not null
);

create table extract_end (
    barcode  varchar(32) not null primary key references sample (barcode),
    ended_at datetimeoffset(3) not null,
    ended_by nvarchar(128) not null,
    why      nvarchar(1000) not null
);

-- value is null where a trial goes back to the default.
create table threshold (
    trial_code    varchar(32) not null references trial (trial_code),
    quantity_id   smallint not null references quantity (quantity_id),
    kind          varchar(16) not null check (kind in ('low', 'high', 'shift')),
    version       int not null,
    value         decimal(28, 12),
    in_force_from datetimeoffset(3) not null,
    set_at        datetimeoffset(3) not null,
    set_by        nvarchar(128) not null,
    why           nvarchar(1000) not null,
    primary key (trial_code, quantity_id, kind, version)
);

-- Derived: how far each expected measurement of a sample is, in the calendar of its trial.
create table measurement_state (
    barcode     varchar(32) not null references sample (barcode),
    quantity_id smallint not null references quantity (quantity_id),
    state       varchar(16) not null check (state in ('expected', 'done', 'late', 'missing', 'excluded')),
    readings    int not null,
    reason      nvarchar(1000) not null,
    primary key (barcode, quantity_id)
);

alter table sample_result add in_doubt bit not null constraint df_sample_result_in_doubt default 0;
go

create or alter view v_reading as
select r.reading_id, r.barcode, s.trial_code, s.pull_no, s.plot_code, p.block, p.clone, p.treatment,
       q.name as quantity, r.value, q.unit, r.below_limit, r.raw_value, r.raw_unit,
       r.extract, r.replicate, r.tuber, r.slice,
       u.instrument, u.run, r.row_key, f.method, r.operator,
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
go

create or alter view v_sample_result as
select s.barcode, s.trial_code, t.season, s.pull_no, l.due_on as pull_due_on, s.plot_code, p.block, p.main_plot,
       p.clone, p.treatment, p.bay_code,
       max(case when x.quantity_id = 60 then x.value end) as glucose_mg_per_g,
       max(case when x.quantity_id = 60 then cast(x.below_limit as integer) end) as glucose_below_limit,
       max(case when x.quantity_id = 61 then x.value end) as sucrose_mg_per_g,
       max(case when x.quantity_id = 61 then cast(x.below_limit as integer) end) as sucrose_below_limit,
       max(case when x.quantity_id = 62 then x.value end) as glucose_sucrose_ratio,
       max(case when x.quantity_id = 63 then x.value end) as specific_gravity,
       max(case when x.quantity_id = 64 then x.value end) as dry_matter_pct,
       max(case when x.quantity_id = 79 then x.value end) as starch_pct,
       max(case when x.quantity_id = 65 then x.value end) as peel_loss_pct,
       max(case when x.quantity_id = 76 then x.value end) as cleaned_surface_pct,
       max(case when x.quantity_id = 66 then x.value end) as hunter_l,
       max(case when x.quantity_id = 67 then x.value end) as hunter_a,
       max(case when x.quantity_id = 68 then x.value end) as hunter_b,
       max(case when x.quantity_id = 69 then x.value end) as cielab_l,
       max(case when x.quantity_id = 70 then x.value end) as cielab_a,
       max(case when x.quantity_id = 71 then x.value end) as cielab_b,
       max(case when x.quantity_id = 72 then x.value end) as dark_chips_pct,
       max(case when x.quantity_id = 73 then x.value end) as stem_end_defect_mean,
       max(case when x.quantity_id = 74 then x.value end) as stem_end_severe_pct,
       max(case when x.quantity_id = 75 then x.value end) as undesirable_chips_pct,
       max(case when x.quantity_id = 77 then x.value end) as storage_shrink_pct,
       max(case when x.quantity_id = 78 then x.value end) as fry_yield_pct,
       max(case when x.quantity_id = 60 then cast(x.in_doubt as integer) end) as glucose_in_doubt,
       max(case when x.quantity_id = 61 then cast(x.in_doubt as integer) end) as sucrose_in_doubt,
       max(case when x.quantity_id = 63 then cast(x.in_doubt as integer) end) as specific_gravity_in_doubt,
       max(case when x.quantity_id = 65 then cast(x.in_doubt as integer) end) as peel_loss_in_doubt,
       max(case when x.quantity_id in (66, 67, 68, 69, 70, 71, 72) then cast(x.in_doubt as integer) end) as colour_in_doubt,
       max(case when x.quantity_id in (73, 74, 75) then cast(x.in_doubt as integer) end) as defects_in_doubt
from sample s
join trial t on t.trial_code = s.trial_code
join plot p on p.trial_code = s.trial_code and p.plot_code = s.plot_code
join pull l on l.trial_code = s.trial_code and l.pull_no = s.pull_no
left join sample_result x on x.barcode = s.barcode
group by s.barcode, s.trial_code, t.season, s.pull_no, l.due_on, s.plot_code, p.block, p.main_plot, p.clone, p.treatment, p.bay_code;
go

create or alter view v_plot_pull as
select trial_code, season, pull_no, pull_due_on, plot_code, block, main_plot, clone, treatment, bay_code,
       count(*) as samples,
       avg(glucose_mg_per_g) as glucose_mg_per_g,
       sum(glucose_below_limit) as glucose_below_limit,
       avg(sucrose_mg_per_g) as sucrose_mg_per_g,
       sum(sucrose_below_limit) as sucrose_below_limit,
       avg(glucose_sucrose_ratio) as glucose_sucrose_ratio,
       avg(specific_gravity) as specific_gravity,
       avg(dry_matter_pct) as dry_matter_pct,
       avg(starch_pct) as starch_pct,
       avg(peel_loss_pct) as peel_loss_pct,
       avg(cleaned_surface_pct) as cleaned_surface_pct,
       avg(hunter_l) as hunter_l,
       avg(hunter_a) as hunter_a,
       avg(hunter_b) as hunter_b,
       avg(cielab_l) as cielab_l,
       avg(cielab_a) as cielab_a,
       avg(cielab_b) as cielab_b,
       avg(dark_chips_pct) as dark_chips_pct,
       avg(stem_end_defect_mean) as stem_end_defect_mean,
       avg(stem_end_severe_pct) as stem_end_severe_pct,
       avg(undesirable_chips_pct) as undesirable_chips_pct,
       avg(storage_shrink_pct) as storage_shrink_pct,
       avg(fry_yield_pct) as fry_yield_pct,
       sum(glucose_in_doubt) as glucose_in_doubt,
       sum(sucrose_in_doubt) as sucrose_in_doubt,
       sum(specific_gravity_in_doubt) as specific_gravity_in_doubt,
       sum(peel_loss_in_doubt) as peel_loss_in_doubt,
       sum(colour_in_doubt) as colour_in_doubt,
       sum(defects_in_doubt) as defects_in_doubt
from v_sample_result
group by trial_code, season, pull_no, pull_due_on, plot_code, block, main_plot, clone, treatment, bay_code;
go

create or alter view v_pull_progress as
select l.trial_code, l.pull_no, l.due_on, l.opens_on, l.closes_on, q.name as quantity,
       (select count(*) from sample s where s.trial_code = l.trial_code and s.pull_no = l.pull_no) as samples_planned,
       (select count(*) from sample s where s.trial_code = l.trial_code and s.pull_no = l.pull_no
          and (select count(*) from reading r where r.barcode = s.barcode and r.quantity_id = e.quantity_id and r.standing = 0) >= e.readings) as samples_measured,
       (select count(*) from sample s where s.trial_code = l.trial_code and s.pull_no = l.pull_no
          and exists (select 1 from reading r where r.barcode = s.barcode and r.quantity_id = e.quantity_id and r.standing = 0)) as samples_started
from pull l
join expected_measurement e on e.trial_code = l.trial_code and e.pull_no = l.pull_no
join quantity q on q.quantity_id = e.quantity_id;
go

create or alter view v_season_grid as
select s.trial_code, s.pull_no, l.due_on as pull_due_on, l.closes_on as pull_closes_on, s.plot_code, p.block, p.clone, p.treatment, s.barcode,
       q.name as quantity, e.readings as readings_expected, coalesce(m.readings, 0) as readings,
       coalesce(m.state, 'expected') as state, coalesce(m.reason, '') as reason
from sample s
join pull l on l.trial_code = s.trial_code and l.pull_no = s.pull_no
join plot p on p.trial_code = s.trial_code and p.plot_code = s.plot_code
join expected_measurement e on e.trial_code = s.trial_code and e.pull_no = s.pull_no
join quantity q on q.quantity_id = e.quantity_id
left join measurement_state m on m.barcode = s.barcode and m.quantity_id = e.quantity_id;
go

create or alter view v_control_check as
select u.instrument, u.run, c.material, q.name as quantity, c.value, q.unit, c.operator, c.measured_at as measured_at_utc,
       f.name as file_name, c.line as file_line
from control_check c
join instrument_run u on u.run_id = c.run_id
join quantity q on q.quantity_id = c.quantity_id
join source_file f on f.file_id = c.file_id
where c.standing = 0;
