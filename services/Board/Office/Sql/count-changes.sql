select count(*) from change_log
