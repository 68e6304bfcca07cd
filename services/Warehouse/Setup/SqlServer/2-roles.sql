-- Run in the warehouse's database by its owner after the first migration, and again after every newer version; it may be run any number of times.
-- 'station migrate' runs it by itself.
--   lab_writer   reads and writes: the logins of the services
--   lab_analyst  reads the views and nothing else
-- Give people and services their role with: alter role lab_analyst add member [name]
if database_principal_id(N'lab_writer') is null create role lab_writer;
if database_principal_id(N'lab_analyst') is null create role lab_analyst;
go

grant select, insert, update on schema::dbo to lab_writer;
-- Facts, alerts, deliveries and the change log are never deleted; these are.
grant delete on sample_result to lab_writer;
grant delete on measurement_state to lab_writer;
grant delete on reading_doubt to lab_writer;
grant delete on extract_end to lab_writer;
grant delete on held_file to lab_writer;
grant delete on parked_row to lab_writer;
grant delete on lease to lab_writer;
grant delete on notice_channel to lab_writer;
go

grant select on v_reading to lab_analyst;
grant select on v_sample_result to lab_analyst;
grant select on v_plot_pull to lab_analyst;
grant select on v_pull_progress to lab_analyst;
grant select on v_season_grid to lab_analyst;
grant select on v_control_check to lab_analyst;
grant select on v_qc_alert to lab_analyst;
grant select on v_fry_batch to lab_analyst;
go
