update reading set standing = 3 where reading_id = @readingId and standing = 0
