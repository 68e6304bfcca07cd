select FileId, Folder, Name, ArrivedAt, State, Reason, Sha256, NewCount, RepeatedCount, ConflictingCount, ParkedCount
from (
    select f.file_id as FileId, a.folder as Folder, a.name as Name, a.arrived_at as ArrivedAt,
           case when a.again = 1 then 'duplicate' else f.state end as State,
           case when a.again = 1 then 'Same bytes as a file that came before; counted once.' else f.reason end as Reason,
           f.sha256 as Sha256, f.new_count as NewCount, f.repeated_count as RepeatedCount,
           f.conflicting_count as ConflictingCount, f.parked_count as ParkedCount
    from arrival a
    join source_file f on f.file_id = a.file_id
    union all
    select 0, h.folder, h.name, h.first_seen_at, 'waiting', h.reason, '', 0, 0, 0, 0
    from held_file h
) listed
where @state is null or State = @state
order by ArrivedAt desc, Name, Folder
offset @skip rows fetch next @most rows only
