select count(*) as Total, count(case when urgency = 0 then 1 end) as Blocks, min(alert_id) as FirstAlertId, max(alert_id) as LastAlertId,
       min(due_at) as DueAt, max(attempts) as Attempts
from delivery where channel = @channel and state = 'pending' and digest_id = @digestId
