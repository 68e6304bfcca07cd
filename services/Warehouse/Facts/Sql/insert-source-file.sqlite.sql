insert into source_file (sha256, kind, name, bytes, archived_as, taken_at, state, profile, profile_version, method, method_facts,
    row_count, new_count, repeated_count, conflicting_count, parked_count)
values (@Sha256, @Kind, @Name, @Bytes, @ArchivedAs, @TakenAt, @State, @Profile, @ProfileVersion, @Method, @MethodFacts, 0, 0, 0, 0, 0)
returning file_id
