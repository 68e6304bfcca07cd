select plot_code as PlotCode, clone as CloneName, treatment as Treatment, pull_no as PullNo, barcode as Barcode, quantity as Quantity, state as State
from v_season_grid
where trial_code = @trialCode
order by plot_code, pull_no
