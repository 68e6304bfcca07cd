select reading_id as ReadingId, barcode as Barcode, quantity as Quantity, raw_value as RawValue, raw_unit as RawUnit, standing as Standing,
       file_name as FileName, file_sha256 as FileSha256, file_line as FileLine, excluded_by as ExcludedBy, excluded_why as ExcludedWhy
from v_reading
where trial_code = @trialCode and standing <> 'in effect'
order by reading_id
