namespace LabPipeline.Warehouse.Plan;

/// <summary>Fetches the plots file of a document and keeps its text, which is part of the document's identity.</summary>
internal sealed class PlotSource(Func<string, string?> beside)
{
    /// <summary>Text of the plots file; null when the document lists its plots itself.</summary>
    public string? Text { get; private set; }

    public string? Fetch(string fileName) => Text = beside(fileName);
}
