update source_file
set state = 'stored', reason_code = null, reason = null
where file_id = @FileId and state = 'waiting'
  and not exists (select 1
                  from reading r
                  where r.reading_id between source_file.first_reading_id and source_file.last_reading_id and r.file_id = source_file.file_id
                    and r.standing in (0, 1) and not exists (select 1 from sample s where s.barcode = r.barcode))
