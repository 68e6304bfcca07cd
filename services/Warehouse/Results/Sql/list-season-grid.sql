select g.pull_no as PullNo, g.plot_code as PlotCode, g.block, g.barcode, g.quantity, g.readings_expected as ReadingsExpected, g.readings,
       g.state, g.reason
from v_season_grid g
join quantity q on q.name = g.quantity
where g.trial_code = @trialCode
order by g.pull_no, g.plot_code, q.quantity_id
