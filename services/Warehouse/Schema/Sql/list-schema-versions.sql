select number, name, checksum from schema_version
