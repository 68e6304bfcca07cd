select holder from lease where name = @name
