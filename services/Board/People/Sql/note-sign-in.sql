update board_user set failures = 0, locked_until = null where user_id = @userId
