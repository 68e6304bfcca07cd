select run_id as RunId, instrument, run from instrument_run where run_id in @runIds order by run_id
