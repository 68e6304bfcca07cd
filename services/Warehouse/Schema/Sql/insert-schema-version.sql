insert into schema_version (number, name, checksum, applied_at) values (@number, @name, @checksum, @at)
