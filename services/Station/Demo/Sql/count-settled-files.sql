select (select count(*) from arrival) + (select count(*) from held_file)
