select c.barcode, c.quantity_id as QuantityId, u.instrument, u.run, cast(c.row_key as nvarchar(200)) as RowKey, c.raw_value as RawValue, c.raw_unit as RawUnit,
       f.name as FileName, f.sha256 as FileSha256, c.line,
       e.barcode as StandingBarcode, e.raw_value as StandingRawValue, e.raw_unit as StandingRawUnit, g.name as StandingFileName, e.line as StandingLine
from reading c
join instrument_run u on u.run_id = c.run_id
join source_file f on f.file_id = c.file_id
left join reading e on e.run_id = c.run_id and e.row_key = c.row_key and e.quantity_id = c.quantity_id and e.standing in (0, 3)
left join source_file g on g.file_id = e.file_id
where c.barcode in @barcodes and c.standing = 1
