insert into arrival (file_id, folder, name, modified_at, arrived_at, again, put_away)
values (@FileId, @Folder, @Name, @ModifiedAt, @ArrivedAt, @Again, @PutAway)
returning arrival_id
