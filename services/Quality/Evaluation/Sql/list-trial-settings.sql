select trial_code as TrialCode, time_zone as TimeZone, extracts_per_sample as ExtractsPerSample,
       dry_matter_relation as DryMatterRelation, dark_below_hunter_l as DarkBelowHunterL, severe_from_score as SevereFromScore
from trial
