insert into repeatability (quantity_id, version, constant, relative, pairs, provisional, source, kept_at, kept_by)
values (@QuantityId, @Version, @Constant, @Relative, @Pairs, @Provisional, @Source, @KeptAt, @KeptBy)
