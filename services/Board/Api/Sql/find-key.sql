select key_id as KeyId, name as Name, made_at as MadeAt, made_by as MadeBy, ended_at as EndedAt from board_key where key_hash = @hash and ended_at is null
