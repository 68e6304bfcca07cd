select line as Line, reason as Reason from parked_row where file_id = @fileId order by line
