namespace LabPipeline.Quality.Rules;

/// <summary>A file came with other values for rows that are stored already: both are kept, and a person accepts one.</summary>
public sealed class ConflictingReExportRule : IRule<SampleEvidence>
{
    public string Name => "conflicting re-export";

    public IEnumerable<Finding> Evaluate(SampleEvidence evidence)
    {
        foreach (var file in evidence.Contested.GroupBy(reading => reading.FileSha256).OrderBy(file => file.Key, StringComparer.Ordinal))
        {
            var rows = file.OrderBy(row => row.Line).ThenBy(row => row.QuantityId).ToList();
            var facts = new FactSheet();
            rows.ForEach(row => facts.Add(NumberText.Invariant($"{row.Quantity.Name}, line {row.Line}"), Both(row)));
            yield return Findings.Of(
                this, evidence, FindingLevel.Hold, "file " + file.Key,
                $"{evidence.Title}: {NumberText.List(rows.ConvertAll(row => $"{row.Quantity.Name} {Both(row)}"), 4)}; the stored value stays in effect.",
                "Ask who exported the run again and why; accept the new value or set it aside. Nothing changes until then.",
                facts);
        }
    }

    private static string Both(ContestedReading row)
    {
        var moved = row.StandingBarcode is { } other && other != row.Barcode ? $" of sample {other}" : "";
        var standing = row.StandingRawValue is null
            ? "a value taken out since"
            : NumberText.Invariant($"{AsWritten(row.StandingRawValue, row.StandingRawUnit)}{moved} ({row.StandingFileName} line {row.StandingLine})");
        return NumberText.Invariant($"{AsWritten(row.RawValue, row.RawUnit)} ({row.FileName} line {row.Line}) against {standing}");
    }

    private static string AsWritten(string value, string? unit) => unit is null or "" or "1" ? value : $"{value} {unit}";
}
