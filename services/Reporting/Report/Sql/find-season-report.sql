select trial_code as TrialCode, version as Version, locked_at as LockedAt, locked_by as LockedBy, last_reading_id as LastReadingId,
       last_change_id as LastChangeId, plan_sha256 as PlanSha256, software as Software, data_sha256 as DataSha256, page_sha256 as PageSha256, data as Data
from season_report
where trial_code = @trialCode and version = @version
