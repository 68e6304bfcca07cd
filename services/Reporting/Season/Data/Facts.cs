namespace LabPipeline.Reporting.Season.Data;

// Rows of a season as the warehouse holds them; each is one line of a statement beside this file.

/// <summary>The state of the warehouse that was read.</summary>
internal sealed record FrozenAt
{
    public DateTimeOffset At { get; init; }

    public long LastReadingId { get; init; }

    public long LastChangeId { get; init; }
}

internal sealed record LevelFact
{
    public string Factor { get; init; } = "";

    public string Level { get; init; } = "";

    public string? Unit { get; init; }

    public int Position { get; init; }
}

internal sealed record BayFact
{
    public string BayCode { get; init; } = "";

    public decimal? SetPointC { get; init; }
}

internal sealed record PlotLevelFact
{
    public string PlotCode { get; init; } = "";

    public string Factor { get; init; } = "";

    public string Level { get; init; } = "";
}

internal sealed record PlotFact
{
    public string PlotCode { get; init; } = "";

    public string Block { get; init; } = "";

    public string? MainPlot { get; init; }

    public string BayCode { get; init; } = "";

    public Dictionary<string, string> Levels { get; init; } = [];
}

internal sealed record PullFact
{
    public int PullNo { get; init; }

    public DateOnly DueOn { get; init; }

    public DateOnly OpensOn { get; init; }

    public DateOnly ClosesOn { get; init; }
}

internal sealed record SampleFact
{
    public string Barcode { get; init; } = "";

    public string PlotCode { get; init; } = "";

    public int PullNo { get; init; }

    public int Readings { get; init; }

    public DateTimeOffset? FirstMeasured { get; init; }

    public DateTimeOffset? LastMeasured { get; init; }
}

internal sealed record ResultFact
{
    public string Barcode { get; init; } = "";

    public int QuantityId { get; init; }

    public decimal Value { get; init; }

    public bool BelowLimit { get; init; }

    public int N { get; init; }

    public decimal? S { get; init; }

    public string Basis { get; init; } = "";

    public bool InDoubt { get; init; }
}

internal sealed record ExpectedFact
{
    public int PullNo { get; init; }

    public int QuantityId { get; init; }

    public int Readings { get; init; }
}

internal sealed record FileFact
{
    public int FileId { get; init; }

    public string Name { get; init; } = "";

    public string Sha256 { get; init; } = "";

    public string Kind { get; init; } = "";

    public string? Profile { get; init; }

    public int? ProfileVersion { get; init; }

    public string? Method { get; init; }

    public string? MethodFacts { get; init; }
}

/// <summary>Lines of one file that one sample's readings in effect came from.</summary>
internal sealed record SourceFact
{
    public string Barcode { get; init; } = "";

    public int FileId { get; init; }

    public int FirstLine { get; init; }

    public int LastLine { get; init; }

    public int Readings { get; init; }
}

internal sealed record ControlFact
{
    public string Instrument { get; init; } = "";

    public string Material { get; init; } = "";

    public int QuantityId { get; init; }

    public decimal Value { get; init; }

    public DateTimeOffset? MeasuredAt { get; init; }

    public int FileId { get; init; }

    public int Line { get; init; }
}

internal sealed record AsideFact
{
    public long ReadingId { get; init; }

    public string Barcode { get; init; } = "";

    public string Quantity { get; init; } = "";

    public string RawValue { get; init; } = "";

    public string RawUnit { get; init; } = "";

    public string Standing { get; init; } = "";

    public string FileName { get; init; } = "";

    public string FileSha256 { get; init; } = "";

    public int FileLine { get; init; }

    public string? ExcludedBy { get; init; }

    public string? ExcludedWhy { get; init; }
}

internal sealed record AlertFact
{
    public long AlertId { get; init; }

    public string RuleName { get; init; } = "";

    public string Level { get; init; } = "";

    public string State { get; init; } = "";

    public int? PullNo { get; init; }

    public string? Barcode { get; init; }

    public string Headline { get; init; } = "";

    public string? SettledBy { get; init; }

    public string? SettledWhy { get; init; }
}

internal sealed record ChangeFact
{
    public DateTimeOffset At { get; init; }

    public string Who { get; init; } = "";

    public string What { get; init; } = "";

    public string Subject { get; init; } = "";

    public string Why { get; init; } = "";
}

internal sealed record RepeatabilityFact
{
    public int QuantityId { get; init; }

    public int Version { get; init; }

    public decimal Constant { get; init; }

    public decimal Relative { get; init; }

    public int Pairs { get; init; }

    public bool Provisional { get; init; }

    public string Source { get; init; } = "";
}

/// <summary>Chips of a plot at a pull with one stem-end score.</summary>
internal sealed record ScoreFact
{
    public string PlotCode { get; init; } = "";

    public int PullNo { get; init; }

    public decimal Score { get; init; }

    public int Chips { get; init; }
}

internal sealed record ThresholdFact
{
    public int QuantityId { get; init; }

    public string Kind { get; init; } = "";

    public decimal Value { get; init; }

    public string SetBy { get; init; } = "";

    public string Why { get; init; } = "";
}

/// <summary>One coefficient of a contrast the trial planned.</summary>
internal sealed record ContrastFact
{
    public string Name { get; init; } = "";

    public string Factors { get; init; } = "";

    public string Cell { get; init; } = "";

    public decimal Coefficient { get; init; }

    public DateTimeOffset StatedAt { get; init; }
}
