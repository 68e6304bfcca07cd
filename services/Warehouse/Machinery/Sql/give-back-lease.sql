delete from lease where name = @name and holder = @holder
