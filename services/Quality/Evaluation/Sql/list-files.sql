select file_id as FileId, sha256, name, kind, state, reason_code as ReasonCode, reason
from source_file
where file_id in @fileIds
order by file_id
