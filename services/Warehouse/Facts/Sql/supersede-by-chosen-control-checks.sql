update control_check set standing = 2
where standing in (0, 3)
  and exists (select 1 from control_check o
              where o.standing = 1 and o.file_id = @fileId and o.reading_id in @chosen
                and o.run_id = control_check.run_id and o.row_key = control_check.row_key and o.quantity_id = control_check.quantity_id)
