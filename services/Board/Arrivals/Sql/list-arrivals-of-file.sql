select arrival_id as ArrivalId, file_id as FileId, folder as Folder, name as Name, modified_at as ModifiedAt, arrived_at as ArrivedAt,
       again as Again, put_away as PutAway
from arrival where file_id = @fileId order by arrival_id
