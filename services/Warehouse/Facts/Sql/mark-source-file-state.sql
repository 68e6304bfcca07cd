update source_file set state = @state, reason_code = 'file.taken-out', reason = @reason where file_id = @fileId
