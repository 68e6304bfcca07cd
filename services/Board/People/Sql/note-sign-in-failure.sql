update board_user
set failures = case when locked_until is null then failures + 1 else 1 end,
    locked_until = case when locked_until is null and failures + 1 >= @most then @until end
where user_id = @userId
