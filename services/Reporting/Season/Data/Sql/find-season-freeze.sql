select (select coalesce(max(reading_id), 0) from reading) as LastReadingId,
       (select coalesce(max(change_id), 0) from change_log) as LastChangeId
