insert into parked_row (file_id, line, reason) values (@fileId, @line, @reason)
