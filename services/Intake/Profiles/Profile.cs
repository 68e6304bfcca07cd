using LabPipeline.Intake.Reading;
using LabPipeline.Science.Quantities;

namespace LabPipeline.Intake.Profiles;

/// <summary>How the files of one instrument are read. Made by <see cref="ProfileDocument"/>, so every instance is consistent.</summary>
public sealed record Profile
{
    public required string Name { get; init; }

    /// <summary>The document it was read from, kept with the files it reads.</summary>
    public required string Document { get; init; }

    /// <summary>Counted up by the laboratory with every change; stored with every file read.</summary>
    public required int Version { get; init; }

    public required QuantityKind Kind { get; init; }

    /// <summary>What rows are about unless a condition in <see cref="Controls"/> or <see cref="FryBatches"/> says otherwise.</summary>
    public required ReadingSubject Subject { get; init; }

    public required MethodFacts Method { get; init; }

    public required FileRule Files { get; init; }

    public required TextRule Text { get; init; }

    /// <summary>Null when the files state no time.</summary>
    public TimeRule? Time { get; init; }

    public required IdentityRule Identity { get; init; }

    /// <summary>Columns that tell the rows of a run apart; empty for the default key.</summary>
    public IReadOnlyList<string> RowKey { get; init; } = [];

    /// <summary>One rule per quantity column; empty when <see cref="OneValueRows"/> is used.</summary>
    public IReadOnlyList<QuantityRule> Quantities { get; init; } = [];

    /// <summary>For files with one value a row and a column naming its quantity.</summary>
    public OneValueRows? OneValueRows { get; init; }

    /// <summary>Texts that mean "no value", compared exactly; the empty text only when it is listed.</summary>
    public IReadOnlyList<string> MissingTexts { get; init; } = [];

    public IReadOnlyList<Placeholder> Placeholders { get; init; } = [];

    public IReadOnlyList<RowRule> Controls { get; init; } = [];

    public IReadOnlyList<RowRule> FryBatches { get; init; } = [];

    /// <summary>Columns known and left unread.</summary>
    public IReadOnlyList<string> IgnoredColumns { get; init; } = [];

    public UnknownColumns UnknownColumns { get; init; }

    public BadRows BadRows { get; init; }
}
