select distinct run_id from fry_batch where file_id = @fileId
