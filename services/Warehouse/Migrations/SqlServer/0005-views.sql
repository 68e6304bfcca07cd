create view v_reading as
select r.reading_id, r.barcode, s.trial_code, s.pull_no, s.plot_code, p.block, p.clone, p.treatment,
       q.name as quantity, r.value, q.unit, r.below_limit, r.raw_value, r.raw_unit,
       r.extract, r.replicate, r.tuber, r.slice,
       u.instrument, u.run, r.row_key, f.method, r.operator,
       r.measured_at as measured_at_utc, r.measured_as as measured_as_written,
       f.name as file_name, f.sha256 as file_sha256, r.line as file_line,
       case r.standing when 0 then 'in effect' when 1 then 'contested' when 2 then 'superseded'
                       when 3 then 'set aside' else 'taken out' end as standing
from reading r
join quantity q on q.quantity_id = r.quantity_id
join instrument_run u on u.run_id = r.run_id
join source_file f on f.file_id = r.file_id
left join sample s on s.barcode = r.barcode
left join plot p on p.trial_code = s.trial_code and p.plot_code = s.plot_code;
go

create view v_sample_result as
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
       max(case when x.quantity_id = 78 then x.value end) as fry_yield_pct
from sample s
join trial t on t.trial_code = s.trial_code
join plot p on p.trial_code = s.trial_code and p.plot_code = s.plot_code
join pull l on l.trial_code = s.trial_code and l.pull_no = s.pull_no
left join sample_result x on x.barcode = s.barcode
group by s.barcode, s.trial_code, t.season, s.pull_no, l.due_on, s.plot_code, p.block, p.main_plot, p.clone, p.treatment, p.bay_code;
go

create view v_plot_pull as
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
       avg(fry_yield_pct) as fry_yield_pct
from v_sample_result
group by trial_code, season, pull_no, pull_due_on, plot_code, block, main_plot, clone, treatment, bay_code;
go

create view v_pull_progress as
select l.trial_code, l.pull_no, l.due_on, l.opens_on, l.closes_on, q.name as quantity,
       (select count(*) from sample s where s.trial_code = l.trial_code and s.pull_no = l.pull_no) as samples_planned,
       (select count(distinct s.barcode) from sample s
          join reading r on r.barcode = s.barcode and r.quantity_id = e.quantity_id and r.standing = 0
         where s.trial_code = l.trial_code and s.pull_no = l.pull_no) as samples_measured
from pull l
join expected_measurement e on e.trial_code = l.trial_code and e.pull_no = l.pull_no
join quantity q on q.quantity_id = e.quantity_id;
go

create view v_qc_alert as
select alert_id, rule_name, level, state, trial_code, pull_no, barcode, headline, advice, facts,
       opened_at as opened_at_utc, cleared_at as cleared_at_utc,
       acknowledged_at as acknowledged_at_utc, acknowledged_by,
       settled_at as settled_at_utc, settled_by, settled_why
from qc_alert;
go

create view v_fry_batch as
select u.run as fry_batch, u.instrument, b.operator, b.measured_at as fried_at_utc,
       max(case when b.quantity_id = 40 then b.value end) as oil_start_c,
       max(case when b.quantity_id = 41 then b.value end) as oil_lowest_c,
       max(case when b.quantity_id = 42 then b.value end) as oil_after_c,
       max(case when b.quantity_id = 43 then b.value end) as fry_time_s
from fry_batch b
join instrument_run u on u.run_id = b.run_id
where b.standing = 0
group by u.run, u.instrument, b.operator, b.measured_at;
