select top (@most) file_id as FileId, sha256 as Sha256, kind as Kind, name as Name, bytes as Bytes, archived_as as ArchivedAs, taken_at as TakenAt,
       state as State, profile as Profile, profile_version as ProfileVersion, row_count as [RowCount], new_count as NewCount,
       repeated_count as RepeatedCount, conflicting_count as ConflictingCount, first_reading_id as FirstReadingId, last_reading_id as LastReadingId
from source_file where file_id > @after order by file_id
