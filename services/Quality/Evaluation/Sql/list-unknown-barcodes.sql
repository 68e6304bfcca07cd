select distinct r.barcode
from source_file f
join reading r on r.reading_id between f.first_reading_id and f.last_reading_id and r.file_id = f.file_id
where f.file_id = @FileId and r.standing in (0, 1) and not exists (select 1 from sample s where s.barcode = r.barcode)
order by r.barcode
