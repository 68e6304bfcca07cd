insert into held_file (folder, name, bytes, reason_code, reason, first_seen_at, last_seen_at)
values (@Folder, @Name, @Bytes, @ReasonCode, @Reason, @FirstSeenAt, @LastSeenAt)
