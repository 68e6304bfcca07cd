update source_file
set kind = @Kind, name = @Name, taken_at = @TakenAt, state = @State, reason_code = @ReasonCode, reason = @Reason,
    profile = @Profile, profile_version = @ProfileVersion, method = @Method, method_facts = @MethodFacts,
    row_count = @RowCount, new_count = @NewCount, repeated_count = @RepeatedCount, conflicting_count = @ConflictingCount,
    parked_count = @ParkedCount, first_reading_id = @FirstReadingId, last_reading_id = @LastReadingId
where file_id = @FileId
