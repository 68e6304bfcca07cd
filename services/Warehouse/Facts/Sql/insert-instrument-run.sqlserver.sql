insert into instrument_run (instrument, run)
output inserted.run_id
select @instrument, @run
where not exists (select 1 from instrument_run where instrument = @instrument and run = @run)
