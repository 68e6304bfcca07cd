update trial
set title = @Title, question = @Question, site = @Site, incomplete_reason = @IncompleteReason, harvested_on = @HarvestedOn,
    time_zone = @TimeZone, standard_clone = @StandardClone, tubers_per_sample = @TubersPerSample, slices_per_tuber = @SlicesPerTuber,
    extracts_per_sample = @ExtractsPerSample, dry_matter_relation = @DryMatterRelation, dark_below_hunter_l = @DarkBelowHunterL,
    severe_from_score = @SevereFromScore, plan_sha256 = @PlanSha256, loaded_at = @LoadedAt
where trial_code = @TrialCode
