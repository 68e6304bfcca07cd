select d.reading_id as ReadingId, d.run_id as RunId, r.barcode, d.cause
from reading_doubt d
join reading r on r.reading_id = d.reading_id
where d.run_id = @runId
