select *
from v_reading
where trial_code = @trialCode and (@pullNo is null or pull_no = @pullNo) and standing = 'in effect'
order by pull_no, plot_code, reading_id
