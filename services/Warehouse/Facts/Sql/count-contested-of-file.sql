select (select count(*) from reading where file_id = @fileId and standing = 1)
     + (select count(*) from control_check where file_id = @fileId and standing = 1)
     + (select count(*) from fry_batch where file_id = @fileId and standing = 1)
