select *
from v_plot_pull
where trial_code = @trialCode and (@pullNo is null or pull_no = @pullNo)
order by pull_no, plot_code
