select folder, name, reason_code as ReasonCode, reason, first_seen_at as FirstSeenAt
from held_file
order by folder, name
