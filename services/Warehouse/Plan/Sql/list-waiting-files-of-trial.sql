select f.file_id as FileId, f.sha256
from source_file f
where f.state = 'waiting'
  and exists (select 1
              from reading r
              join sample s on s.barcode = r.barcode
              where r.reading_id between f.first_reading_id and f.last_reading_id and r.file_id = f.file_id
                and r.standing in (0, 1) and s.trial_code = @trialCode)
order by f.file_id
