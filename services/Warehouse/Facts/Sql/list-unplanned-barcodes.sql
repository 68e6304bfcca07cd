select distinct r.barcode from reading r
where r.file_id = @fileId and r.reading_id between @first and @last and r.standing in (0, 1)
  and not exists (select 1 from sample s where s.barcode = r.barcode)
order by r.barcode
