select trial_code as TrialCode, title, question, season, site, design, clone_factor as CloneFactor, main_plot_factor as MainPlotFactor,
       incomplete_reason as IncompleteReason, harvested_on as HarvestedOn, time_zone as TimeZone, standard_clone as StandardClone,
       tubers_per_sample as TubersPerSample, slices_per_tuber as SlicesPerTuber, extracts_per_sample as ExtractsPerSample,
       dry_matter_relation as DryMatterRelation, dark_below_hunter_l as DarkBelowHunterL, severe_from_score as SevereFromScore,
       plan_sha256 as PlanSha256
from trial
where trial_code = @trialCode
