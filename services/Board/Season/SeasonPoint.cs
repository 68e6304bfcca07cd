namespace LabPipeline.Board.Season;

/// <summary>One plot's result at one pull: the unit treatments were applied to.</summary>
public sealed record SeasonPoint
{
    public string CloneName { get; init; } = "";

    public string Treatment { get; init; } = "";

    public string PlotCode { get; init; } = "";

    public string Block { get; init; } = "";

    public int PullNo { get; init; }

    public DateOnly DueOn { get; init; }

    public DateOnly HarvestedOn { get; init; }

    public string Barcode { get; init; } = "";

    public decimal Value { get; init; }

    public bool BelowLimit { get; init; }

    /// <summary>Whether a reading behind it is in doubt because a control beside it failed.</summary>
    public bool InDoubt { get; init; }

    public int DaysAfterHarvest => DueOn.DayNumber - HarvestedOn.DayNumber;
}
