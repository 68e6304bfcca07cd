insert into season_report (trial_code, version, locked_at, locked_by, last_reading_id, last_change_id, plan_sha256, software, data_sha256, page_sha256, data)
values (@TrialCode, @Version, @LockedAt, @LockedBy, @LastReadingId, @LastChangeId, @PlanSha256, @Software, @DataSha256, @PageSha256, @Data)
