select at, who, what, subject, why from change_log order by change_id desc limit @most offset @skip
