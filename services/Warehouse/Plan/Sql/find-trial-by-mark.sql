select trial_code from trial where season = @season and mark = @mark
