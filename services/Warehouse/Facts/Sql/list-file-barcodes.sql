select distinct barcode from reading
where file_id = @fileId and reading_id between @first and @last and standing in (0, 1)
order by barcode
