select file_name from board_entry where entry_id = @entryId
