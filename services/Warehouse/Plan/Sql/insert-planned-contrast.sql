insert into planned_contrast (trial_code, name, factors, cell, coefficient, position, stated_at)
values (@TrialCode, @Name, @Factors, @Cell, @Coefficient, @Position, @StatedAt)
