select run_id from instrument_run where instrument = @instrument and run = @run
