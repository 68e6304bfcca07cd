update board_user set role = @role, closed = @closed, stamp = @stamp where user_id = @userId
