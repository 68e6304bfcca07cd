delete from parked_row where file_id = @fileId
