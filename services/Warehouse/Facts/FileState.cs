namespace LabPipeline.Warehouse.Facts;

/// <summary>What became of a file's content, in the words the ledger stores.</summary>
public static class FileState
{
    /// <summary>All its readings are in the warehouse and belong to planned samples.</summary>
    public const string Stored = "stored";

    /// <summary>Its readings are in the warehouse, but some barcodes are in no plan yet.</summary>
    public const string Waiting = "waiting";

    /// <summary>It could not be read under its profile; nothing of it is stored.</summary>
    public const string Refused = "refused";

    /// <summary>A person took it out again; its readings no longer count.</summary>
    public const string TakenOut = "taken out";
}
