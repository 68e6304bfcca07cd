insert into instrument_run (instrument, run) values (@instrument, @run)
on conflict do nothing
returning run_id
