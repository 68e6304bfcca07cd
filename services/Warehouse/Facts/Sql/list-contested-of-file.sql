select 'reading' as Kind, c.reading_id as ReadingId, c.line as Line, c.barcode as Subject, q.name as Quantity, c.raw_value as RawValue, c.raw_unit as RawUnit,
       s.raw_value as StandingRawValue, s.raw_unit as StandingRawUnit, s.barcode as StandingSubject, f.name as StandingFile, s.line as StandingLine
from reading c
join quantity q on q.quantity_id = c.quantity_id
left join reading s on s.run_id = c.run_id and s.row_key = c.row_key and s.quantity_id = c.quantity_id and s.standing in (0, 3)
left join source_file f on f.file_id = s.file_id
where c.file_id = @fileId and c.standing = 1 and c.reading_id between @first and @last
union all
select 'control', c.reading_id, c.line, c.material, q.name, c.raw_value, c.raw_unit, s.raw_value, s.raw_unit, s.material, f.name, s.line
from control_check c
join quantity q on q.quantity_id = c.quantity_id
left join control_check s on s.run_id = c.run_id and s.row_key = c.row_key and s.quantity_id = c.quantity_id and s.standing in (0, 3)
left join source_file f on f.file_id = s.file_id
where c.file_id = @fileId and c.standing = 1
union all
select 'fry', c.reading_id, c.line, c.row_key, q.name, c.raw_value, c.raw_unit, s.raw_value, s.raw_unit, s.row_key, f.name, s.line
from fry_batch c
join quantity q on q.quantity_id = c.quantity_id
left join fry_batch s on s.run_id = c.run_id and s.row_key = c.row_key and s.quantity_id = c.quantity_id and s.standing in (0, 3)
left join source_file f on f.file_id = s.file_id
where c.file_id = @fileId and c.standing = 1
order by 3, 5
