update source_file
set state = @State, reason_code = @ReasonCode, reason = @Reason, row_count = @RowCount, new_count = @NewCount, repeated_count = @RepeatedCount,
    conflicting_count = @ConflictingCount, parked_count = @ParkedCount, first_reading_id = @FirstReadingId, last_reading_id = @LastReadingId
where file_id = @FileId
