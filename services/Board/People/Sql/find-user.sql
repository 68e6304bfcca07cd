select user_id as UserId, name as Name, role as RoleName, password_hash as PasswordHash, stamp as Stamp, failures as Failures, locked_until as LockedUntil, closed as Closed, made_at as MadeAt
from board_user
where user_id = @userId
