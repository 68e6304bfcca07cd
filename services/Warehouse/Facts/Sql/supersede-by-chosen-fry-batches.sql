update fry_batch set standing = 2
where standing in (0, 3)
  and exists (select 1 from fry_batch o
              where o.standing = 1 and o.file_id = @fileId and o.reading_id in @chosen
                and o.run_id = fry_batch.run_id and o.row_key = fry_batch.row_key and o.quantity_id = fry_batch.quantity_id)
