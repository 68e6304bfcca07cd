update board_key set ended_at = @endedAt where name = @name and ended_at is null
