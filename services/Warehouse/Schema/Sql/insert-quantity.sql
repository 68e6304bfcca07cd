insert into quantity (quantity_id, name, unit, description) values (@id, @name, @unit, @description)
