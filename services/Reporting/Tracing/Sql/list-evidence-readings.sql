select v.reading_id as ReadingId, v.barcode as Barcode, v.plot_code as PlotCode, v.quantity as Quantity, v.raw_value as RawValue, v.raw_unit as RawUnit,
       v.extract as Extract, v.tuber as Tuber, v.slice as Slice, v.replicate as Replicate, v.instrument as Instrument, v.run as Run, v.operator as Operator,
       v.file_name as FileName, v.file_sha256 as FileSha256, v.file_line as FileLine, f.profile as Profile, f.profile_version as ProfileVersion,
       v.method as Method, v.standing as Standing
from v_reading v
join source_file f on f.sha256 = v.file_sha256
where v.barcode in @barcodes
order by v.barcode, v.quantity, v.reading_id
