select r.reading_id as ReadingId, r.barcode, r.quantity_id as QuantityId, r.value, r.below_limit as BelowLimit, r.raw_value as RawValue, r.raw_unit as RawUnit,
       r.extract, r.replicate, r.tuber, r.slice, u.instrument, u.run, cast(r.row_key as nvarchar(200)) as RowKey, r.measured_at as MeasuredAt,
       r.file_id as FileId, f.name as FileName, r.line, case when d.reading_id is null then 0 else 1 end as InDoubt
from reading r
join instrument_run u on u.run_id = r.run_id
join source_file f on f.file_id = r.file_id
left join reading_doubt d on d.reading_id = r.reading_id
where r.barcode in @barcodes and r.standing = 0
