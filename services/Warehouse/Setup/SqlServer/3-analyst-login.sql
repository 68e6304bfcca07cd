-- Gives one person a login that reads the views and nothing else. Run it in the warehouse's database, after 2-roles.sql, as a login that may create
-- logins. Copy it, write the person's name for lab_reader in every line and a password of your own, and keep the copy nowhere.
-- With directory accounts: create login [DOMAIN\name] from windows; in place of the first statement.
if suser_id(N'lab_reader') is null create login lab_reader with password = N'Write-your-own-1', check_policy = on, check_expiration = on;
go

if database_principal_id(N'lab_reader') is null create user lab_reader for login lab_reader with default_schema = dbo;
go

alter role lab_analyst add member lab_reader;
go

-- What the role does not give, nobody gives by mistake: no other role of this database.
if is_rolemember(N'db_owner', N'lab_reader') = 1 alter role db_owner drop member lab_reader;
if is_rolemember(N'lab_owner', N'lab_reader') = 1 alter role lab_owner drop member lab_reader;
if is_rolemember(N'lab_writer', N'lab_reader') = 1 alter role lab_writer drop member lab_reader;
if is_rolemember(N'db_datawriter', N'lab_reader') = 1 alter role db_datawriter drop member lab_reader;
if is_rolemember(N'db_datareader', N'lab_reader') = 1 alter role db_datareader drop member lab_reader;
