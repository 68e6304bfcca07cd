select at, who, what, subject, why from change_log where subject = @subject order by change_id
