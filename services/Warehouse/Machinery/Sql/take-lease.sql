insert into lease (name, holder, expires_at)
select @name, @holder, @expires
where not exists (select 1 from lease where name = @name) and @now < @expires
