select r.barcode
from reading r
join sample s on s.barcode = r.barcode
where r.quantity_id in (1, 2, 3) and r.standing = 0
group by r.barcode
having count(distinct r.extract) > 1
order by r.barcode
