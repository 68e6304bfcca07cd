insert into board_user (name, role, password_hash, stamp, failures, closed, made_at)
values (@Name, @RoleName, @PasswordHash, @Stamp, 0, 0, @MadeAt)
