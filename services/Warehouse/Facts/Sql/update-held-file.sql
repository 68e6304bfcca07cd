update held_file set bytes = @Bytes, reason_code = @ReasonCode, reason = @Reason, last_seen_at = @LastSeenAt
where folder = @Folder and name = @Name
