select count(*) from board_user where closed = 0 and (@role is null or role = @role)
