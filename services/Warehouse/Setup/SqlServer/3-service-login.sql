-- Run by the server's administrator in the warehouse's database, as often as wanted; the password comes from the environment:
--   SERVICE_PASSWORD=… sqlcmd -S server -d LabPipeline -i 3-service-login.sql
-- The login the services use: it reads and writes, and can neither change tables nor delete facts.
if suser_id(N'labpipeline_service') is null create login labpipeline_service with password = N'$(SERVICE_PASSWORD)';
go
if database_principal_id(N'labpipeline_service') is null create user labpipeline_service for login labpipeline_service;
if database_principal_id(N'lab_writer') is null create role lab_writer;
go
alter role lab_writer add member labpipeline_service;
