if object_id('schema_version') is null
    create table schema_version (
        number     int not null primary key,
        name       nvarchar(128) not null,
        checksum   nvarchar(64) not null,
        applied_at datetimeoffset(3) not null
    )
