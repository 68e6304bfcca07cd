select file_id as FileId, sha256, name, kind, state, reason_code as ReasonCode, reason,
       first_reading_id as FirstReadingId, last_reading_id as LastReadingId
from source_file
where file_id in @fileIds
order by file_id
