select distinct barcode from reading where file_id = @fileId order by barcode
