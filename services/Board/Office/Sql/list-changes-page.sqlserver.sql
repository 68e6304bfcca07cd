select at, who, what, subject, why from change_log order by change_id desc offset @skip rows fetch next @most rows only
