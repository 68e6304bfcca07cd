update pull set due_on = @DueOn, opens_on = @OpensOn, closes_on = @ClosesOn where trial_code = @TrialCode and pull_no = @PullNo
