select v.reading_id as ReadingId, v.quantity as Quantity, v.value as Value, v.unit as Unit, v.below_limit as BelowLimit,
       v.raw_value as RawValue, v.raw_unit as RawUnit, v.extract as Extract, v.replicate as Replicate, v.tuber as Tuber, v.slice as Slice,
       v.instrument as Instrument, v.run as Run, v.operator as Operator, v.measured_at_utc as MeasuredAt,
       v.file_name as FileName, v.file_sha256 as FileSha256, v.file_line as Line,
       f.profile as Profile, f.profile_version as ProfileVersion, v.standing as Standing, v.doubt_cause as DoubtCause, v.excluded_why as ExcludedWhy
from v_reading v
join source_file f on f.sha256 = v.file_sha256
where v.barcode = @barcode
order by v.quantity, v.extract, v.tuber, v.slice, v.replicate, v.reading_id
