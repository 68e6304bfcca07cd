select q.name as Quantity, r.value as Value, q.unit as Unit, r.below_limit as BelowLimit, r.n as N, r.s as S,
       r.basis as Basis, r.from_readings as FromReadings, r.in_doubt as InDoubt
from sample_result r
join quantity q on q.quantity_id = r.quantity_id
where r.barcode = @barcode
order by r.quantity_id
