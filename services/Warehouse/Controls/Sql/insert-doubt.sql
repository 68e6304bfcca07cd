insert into reading_doubt (reading_id, run_id, cause) values (@ReadingId, @RunId, @Cause)
