insert into board_key (name, key_hash, made_at, made_by)
select @name, @hash, @madeAt, @madeBy
where not exists (select 1 from board_key where name = @name)
