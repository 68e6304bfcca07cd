select name, levels, noted_at as NotedAt from notice_channel order by name
