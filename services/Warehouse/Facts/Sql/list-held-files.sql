select folder as Folder, name as Name, bytes as Bytes, reason_code as ReasonCode, reason as Reason,
       first_seen_at as FirstSeenAt, last_seen_at as LastSeenAt
from held_file order by folder, name
