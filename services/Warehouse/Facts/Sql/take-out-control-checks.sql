update control_check set standing = 4 where file_id = @fileId and standing <> 4
