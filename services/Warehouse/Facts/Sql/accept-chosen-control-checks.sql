update control_check set standing = 0 where standing = 1 and file_id = @fileId and reading_id in @chosen
