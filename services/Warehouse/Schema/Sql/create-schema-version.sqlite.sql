create table if not exists schema_version (
    number     integer not null primary key,
    name       text not null,
    checksum   text not null,
    applied_at text not null
)
