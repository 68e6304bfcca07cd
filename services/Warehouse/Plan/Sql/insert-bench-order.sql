insert into bench_order (trial_code, pull_no, kind, draw_no, seed, made_at, made_by, why)
values (@TrialCode, @PullNo, @Kind, @DrawNo, @Seed, @MadeAt, @MadeBy, @Why)
