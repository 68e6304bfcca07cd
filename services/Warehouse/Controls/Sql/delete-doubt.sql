delete from reading_doubt where reading_id = @ReadingId
