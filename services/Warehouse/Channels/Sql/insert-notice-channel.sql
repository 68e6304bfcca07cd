insert into notice_channel (name, levels, noted_at) values (@Name, @Levels, @NotedAt)
