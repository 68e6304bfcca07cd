select file_id as FileId, sha256 as Sha256, kind as Kind, name as Name, bytes as Bytes, archived_as as ArchivedAs, taken_at as TakenAt,
       state as State, reason_code as ReasonCode, reason as Reason, profile as Profile, profile_version as ProfileVersion,
       method as Method, method_facts as MethodFacts, row_count as [RowCount], new_count as NewCount, repeated_count as RepeatedCount,
       conflicting_count as ConflictingCount, parked_count as ParkedCount, first_reading_id as FirstReadingId, last_reading_id as LastReadingId
from source_file where sha256 in @hashes
