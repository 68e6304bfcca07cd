select r.barcode as Barcode, r.file_id as FileId, min(r.line) as FirstLine, max(r.line) as LastLine, count(*) as Readings
from reading r
join sample s on s.barcode = r.barcode
where s.trial_code = @trialCode and r.standing = 0
group by r.barcode, r.file_id
order by r.barcode, r.file_id
