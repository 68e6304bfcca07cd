update source_file
set kind = @Kind, name = @Name, taken_at = @TakenAt, profile = @Profile, profile_version = @ProfileVersion, method = @Method, method_facts = @MethodFacts
where file_id = @FileId
