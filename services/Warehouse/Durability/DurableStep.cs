namespace LabPipeline.Warehouse.Durability;

/// <summary>The steps after which something has changed for good. Between any two of them the process may end, and the next one goes on from there.</summary>
public enum DurableStep
{
    /// <summary>A file's bytes lie flushed in the archive under a passing name.</summary>
    DraftWritten,

    /// <summary>They lie under their hash; the name may still be lost with the power.</summary>
    FileArchived,

    /// <summary>The name is flushed too.</summary>
    ShelfSettled,

    /// <summary>Any transaction, everything in it written: ledger, readings and outgoing messages, or results and alerts, or a delivery.</summary>
    BeforeCommit,

    /// <summary>Any transaction, committed.</summary>
    Committed,

    /// <summary>The reason of a refusal lies beside the place of its file.</summary>
    ReasonWritten,

    /// <summary>An original left the drop folder.</summary>
    OriginalMoved,

    /// <summary>The originals of a batch and what belongs to them left the drop folder, and the ledger does not know it yet.</summary>
    BatchMoved,

    /// <summary>The bus has messages which are not marked as published.</summary>
    MessagesPublished,

    /// <summary>Messages are handled in the warehouse and not yet acknowledged to the bus.</summary>
    MessageHandled,

    /// <summary>A channel has taken a notice, and the warehouse does not know it yet.</summary>
    NoticeSent,
}
