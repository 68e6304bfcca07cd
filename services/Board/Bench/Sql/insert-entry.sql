insert into board_entry (entry_id, sheet, file_name, user_name, taken_at)
select @entryId, @sheet, @fileName, @userName, @takenAt
where not exists (select 1 from board_entry where entry_id = @entryId)
