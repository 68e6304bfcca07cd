select distinct e.file_id
from arrival a
join arrival e on e.folder = a.folder and e.name = a.name and e.arrival_id < a.arrival_id
join source_file f on f.file_id = e.file_id and f.state = 'refused'
where a.file_id = @fileId
