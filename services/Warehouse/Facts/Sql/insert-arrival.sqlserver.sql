insert into arrival (file_id, folder, name, modified_at, arrived_at, again, put_away)
output inserted.arrival_id
values (@FileId, @Folder, @Name, @ModifiedAt, @ArrivedAt, @Again, @PutAway)
