select instrument, run from instrument_run where run_id = @runId
