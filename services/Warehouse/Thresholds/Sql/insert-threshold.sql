insert into threshold (trial_code, quantity_id, kind, version, value, in_force_from, set_at, set_by, why)
values (@TrialCode, @QuantityId, @Kind, @Version, @Value, @InForceFrom, @SetAt, @SetBy, @Why)
