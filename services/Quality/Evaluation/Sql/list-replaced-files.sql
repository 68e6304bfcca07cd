select a.file_id as FileId, min(f.name) as ReplacedBy
from arrival a
join arrival later on later.folder = a.folder and later.name = a.name and later.arrival_id > a.arrival_id
join source_file f on f.file_id = later.file_id and f.state in ('stored', 'waiting')
where a.file_id in @fileIds
group by a.file_id
