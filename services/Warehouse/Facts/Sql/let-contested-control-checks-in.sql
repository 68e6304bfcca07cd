update control_check set standing = 0
where standing = 1
  and exists (select 1 from control_check o
              where o.file_id = @fileId and o.run_id = control_check.run_id and o.row_key = control_check.row_key and o.quantity_id = control_check.quantity_id)
  and not exists (select 1 from control_check o
                  where o.standing in (0, 3) and o.run_id = control_check.run_id and o.row_key = control_check.row_key and o.quantity_id = control_check.quantity_id)
  and reading_id = (select min(o.reading_id) from control_check o
                    where o.standing = 1 and o.run_id = control_check.run_id and o.row_key = control_check.row_key and o.quantity_id = control_check.quantity_id)
