insert into source_file (sha256, kind, name, bytes, archived_as, taken_at, state, reason_code, reason, profile, profile_version,
    method, method_facts, row_count, new_count, repeated_count, conflicting_count, parked_count, first_reading_id, last_reading_id)
values (@Sha256, @Kind, @Name, @Bytes, @ArchivedAs, @TakenAt, @State, @ReasonCode, @Reason, @Profile, @ProfileVersion,
    @Method, @MethodFacts, @RowCount, @NewCount, @RepeatedCount, @ConflictingCount, @ParkedCount, @FirstReadingId, @LastReadingId)
returning file_id
