-- Optional. Run in the warehouse's database, by its owner, the first time while nothing is connected; see docs/specs/sql-server.md.
-- Analysts then read the last committed state and neither wait for a load nor hold one up.
if exists (select 1 from sys.databases where database_id = db_id() and is_read_committed_snapshot_on = 0)
    alter database current set read_committed_snapshot on with rollback immediate;
-- What was acknowledged is on disk.
alter database current set delayed_durability = disabled;
alter database current set page_verify checksum;
alter database current set auto_close off;
alter database current set auto_shrink off;
