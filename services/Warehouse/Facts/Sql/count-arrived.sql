select count(*) from arrival a join source_file f on f.file_id = a.file_id
where f.sha256 = @sha256 and a.folder = @folder and a.name = @name and a.modified_at = @modifiedAt
