using System.Globalization;
using System.Text.Json;
using LabPipeline.Intake.Archive;
using LabPipeline.Intake.Profiles;
using LabPipeline.Intake.Reading;
using LabPipeline.Warehouse.Facts;

namespace LabPipeline.Intake.Storing;

/// <summary>Writes the ledger's row for one file: pure, from what was read.</summary>
internal sealed record LedgerEntry(string Kind, ReadyFile Ready, ArchivedFile Copy, SourceFile? Known, DateTimeOffset Now)
{
    private const int LongestReason = 2000;

    /// <summary>The row before anything is read; what came of it follows in the same transaction.</summary>
    public SourceFile Opened() => new()
    {
        FileId = Known?.FileId ?? 0,
        Sha256 = Copy.Sha256,
        Kind = Kind,
        Name = Ready.File.Name,
        Bytes = Copy.Bytes,
        ArchivedAs = Copy.Path,
        TakenAt = Now,
        State = FileState.Refused,
        Profile = Ready.Profile.Name,
        ProfileVersion = Ready.Profile.Version,
        Method = $"{Ready.Profile.Method.Name} {Ready.Profile.Method.Version}",
        MethodFacts = FactsOf(Ready.Profile.Method),
    };

    public SourceFile Refused(SourceFile opened, ReadOutcome outcome)
    {
        var first = outcome.Faults[0];
        var reason = first.Describe(Ready.File.Name);
        if (outcome.FaultCount > 1)
        {
            reason += string.Create(CultureInfo.InvariantCulture, $" And {outcome.FaultCount - 1} more.");
        }

        return opened with
        {
            State = FileState.Refused,
            ReasonCode = first.Code,
            Reason = reason.Length > LongestReason ? reason[..LongestReason] : reason,
            RowCount = (int)outcome.Rows,
        };
    }

    public static SourceFile Stored(SourceFile opened, ReadOutcome outcome, FactCounts counts, UnplannedBarcodes unplanned) => opened with
    {
        State = unplanned.Count == 0 ? FileState.Stored : FileState.Waiting,
        ReasonCode = unplanned.Count == 0 ? null : "barcode.not-planned",
        Reason = unplanned.Count == 0 ? null : NotPlanned(unplanned),
        RowCount = (int)outcome.Rows,
        NewCount = counts.New,
        RepeatedCount = counts.Repeated,
        ConflictingCount = counts.Conflicting,
        ParkedCount = (int)outcome.ParkedRowCount,
        FirstReadingId = counts.FirstReadingId,
        LastReadingId = counts.LastReadingId,
    };

    private static string NotPlanned(UnplannedBarcodes unplanned)
    {
        var named = string.Join(", ", unplanned.First);
        var more = unplanned.Count > unplanned.First.Count
            ? string.Create(CultureInfo.InvariantCulture, $" and {unplanned.Count - unplanned.First.Count} more")
            : "";
        return $"In no trial plan: {named}{more}. The readings are kept and join by themselves once a plan holds the sample; check the tags if none should.";
    }

    private static string FactsOf(MethodFacts method)
    {
        var facts = new SortedDictionary<string, string>(StringComparer.Ordinal);
        foreach (var (name, text) in method.Facts)
        {
            facts.Add(name, text);
        }

        foreach (var (quantity, limit) in method.LimitsOfQuantitation)
        {
            facts.Add("limitOfQuantitation." + quantity, limit.ToString(CultureInfo.InvariantCulture));
        }

        return JsonSerializer.Serialize(facts);
    }
}
