update reading set standing = 0
where standing = 1
  and exists (select 1 from reading o
              where o.file_id = @fileId and o.run_id = reading.run_id and o.row_key = reading.row_key and o.quantity_id = reading.quantity_id)
  and not exists (select 1 from reading o
                  where o.standing in (0, 3) and o.run_id = reading.run_id and o.row_key = reading.row_key and o.quantity_id = reading.quantity_id)
  and reading_id = (select min(o.reading_id) from reading o
                    where o.standing = 1 and o.run_id = reading.run_id and o.row_key = reading.row_key and o.quantity_id = reading.quantity_id)
