update reading set standing = 0 where standing = 1 and file_id = @fileId and reading_id in @chosen
