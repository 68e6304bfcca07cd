insert into reading_exclusion (reading_id, excluded_at, excluded_by, why) values (@readingId, @now, @who, @why)
