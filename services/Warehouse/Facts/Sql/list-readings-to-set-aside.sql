select reading_id
from reading
where barcode = @barcode and quantity_id = @quantityId and standing = 0 and (@extract is null or extract = @extract)
order by reading_id
