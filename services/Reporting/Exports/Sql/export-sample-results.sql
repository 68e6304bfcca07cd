select *
from v_sample_result
where trial_code = @trialCode and (@pullNo is null or pull_no = @pullNo)
order by pull_no, plot_code, barcode
