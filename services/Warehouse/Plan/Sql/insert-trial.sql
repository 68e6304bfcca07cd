insert into trial (trial_code, title, question, season, mark, site, design, clone_factor, main_plot_factor, incomplete_reason,
                   harvested_on, time_zone, standard_clone, tubers_per_sample, slices_per_tuber, extracts_per_sample,
                   dry_matter_relation, dark_below_hunter_l, severe_from_score, plan_sha256, loaded_at)
values (@TrialCode, @Title, @Question, @Season, @Mark, @Site, @Design, @CloneFactor, @MainPlotFactor, @IncompleteReason,
        @HarvestedOn, @TimeZone, @StandardClone, @TubersPerSample, @SlicesPerTuber, @ExtractsPerSample,
        @DryMatterRelation, @DarkBelowHunterL, @SevereFromScore, @PlanSha256, @LoadedAt)
