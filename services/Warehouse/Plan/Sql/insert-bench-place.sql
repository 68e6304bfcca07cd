insert into bench_place (trial_code, pull_no, kind, draw_no, position, barcode)
values (@TrialCode, @PullNo, @Kind, @DrawNo, @Position, @Barcode)
