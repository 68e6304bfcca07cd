namespace LabPipeline.Board.Papers;

/// <summary>What can be printed for a pull; the names stand in addresses.</summary>
internal static class PaperKinds
{
    /// <summary>One tag a sample.</summary>
    public const string Tags = "tags";

    /// <summary>An S and an F label a sample.</summary>
    public const string Halves = "halves";

    /// <summary>An S and an F label a tuber.</summary>
    public const string Tubers = "tubers";

    /// <summary>Which bags to bring.</summary>
    public const string PickList = "pick-list";

    public static readonly IReadOnlyList<string> All = [Tags, Halves, Tubers, PickList];
}
