select arrival_id as ArrivalId, file_id as FileId, folder as Folder, name as Name, modified_at as ModifiedAt, arrived_at as ArrivedAt,
       again as Again, put_away as PutAway
from arrival
where file_id = @fileId and folder = @folder and name = @name and modified_at = @modifiedAt and put_away = 0
