insert into control_limit (instrument, material, quantity_id, version, kind, centre, sigma, lower, upper, runs, from_runs,
    in_force_from, decided_at, decided_by, why)
values (@Instrument, @Material, @QuantityId, @Version, @Kind, @Centre, @Sigma, @Lower, @Upper, @Runs, @FromRuns,
    @InForceFrom, @DecidedAt, @DecidedBy, @Why)
