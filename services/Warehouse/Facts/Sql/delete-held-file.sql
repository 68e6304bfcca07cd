delete from held_file where folder = @folder and name in @names
