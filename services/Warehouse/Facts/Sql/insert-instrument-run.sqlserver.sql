insert into instrument_run (instrument, run) output inserted.run_id values (@instrument, @run)
