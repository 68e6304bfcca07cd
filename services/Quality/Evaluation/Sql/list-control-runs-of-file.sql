select distinct run_id from control_check where file_id = @fileId
