namespace LabPipeline.Conventions.Tests.TSql;

/// <summary>Views of SQL Server itself that our scripts read, with the columns they use, as Microsoft's reference lists them.</summary>
internal static class KnownSystemViews
{
    public static readonly IReadOnlyDictionary<string, IReadOnlyList<string>> Columns = new Dictionary<string, IReadOnlyList<string>>
    {
        ["databases"] = ["database_id", "name", "is_read_committed_snapshot_on"],
    };
}
