update reading set standing = 2
where standing in (0, 3)
  and exists (select 1 from reading o
              where o.standing = 1 and o.file_id = @fileId and o.reading_id in @chosen
                and o.run_id = reading.run_id and o.row_key = reading.row_key and o.quantity_id = reading.quantity_id)
