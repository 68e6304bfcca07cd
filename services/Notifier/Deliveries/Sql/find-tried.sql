select count(case when digest_id is null then 1 end) as TriedSingly, max(case when digest_id is not null then last_attempt_at end) as LastDigestAt
from delivery where channel = @channel and last_attempt_at > @since
