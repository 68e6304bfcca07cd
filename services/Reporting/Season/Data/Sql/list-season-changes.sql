select at as At, who as Who, what as What, subject as Subject, why as Why
from change_log
where subject like 'file:%' or subject = @trialSubject or what = 'alert settled'
order by change_id
