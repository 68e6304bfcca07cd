insert into pull (trial_code, pull_no, due_on, opens_on, closes_on) values (@TrialCode, @PullNo, @DueOn, @OpensOn, @ClosesOn)
