update quantity set name = @name, unit = @unit, description = @description where quantity_id = @id
