update board_user set password_hash = @hash, stamp = @stamp, failures = 0, locked_until = null where user_id = @userId
