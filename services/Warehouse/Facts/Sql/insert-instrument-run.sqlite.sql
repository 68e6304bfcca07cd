insert into instrument_run (instrument, run) values (@instrument, @run) returning run_id
