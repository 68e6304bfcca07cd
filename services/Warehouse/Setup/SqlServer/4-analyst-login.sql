-- Run by the server's administrator in the warehouse's database, after 2-roles.sql, once for each person; name and password come from the environment:
--   ANALYST=name ANALYST_PASSWORD=… sqlcmd -S server -d LabPipeline -i 4-analyst-login.sql
-- A login that reads the views and nothing else, as long as nobody adds it to another role.
-- With directory accounts put in place of the first statement: create login [DOMAIN\name] from windows;
if suser_id(N'$(ANALYST)') is null create login [$(ANALYST)] with password = N'$(ANALYST_PASSWORD)', check_policy = on;
go
if database_principal_id(N'$(ANALYST)') is null create user [$(ANALYST)] for login [$(ANALYST)] with default_schema = dbo;
if database_principal_id(N'lab_analyst') is null create role lab_analyst;
go
alter role lab_analyst add member [$(ANALYST)];
