using LabPipeline.Intake.Profiles;

namespace LabPipeline.Intake.Reading;

/// <summary>A <see cref="CellSource"/> with its column found; <see cref="None"/> where the profile has none.</summary>
internal readonly record struct BoundSource(int Column, string? Constant, bool Required)
{
    public static readonly BoundSource None = new(-1, null, false);

    public bool Exists => Column >= 0 || Constant is not null;

    public static BoundSource Of(CellSource? source, IReadOnlyDictionary<string, int> columns) => source switch
    {
        null => None,
        { Column: { } name } => new BoundSource(columns[name], null, source.Required),
        _ => new BoundSource(-1, source.Constant, source.Required),
    };

    public ReadOnlySpan<char> Read(IRowSource rows) => Constant is not null ? Constant : Column >= 0 ? rows.Cell(Column) : default;

    public CellPlace Place(IRowSource rows) => Column >= 0 ? rows.PlaceOf(Column) : new CellPlace(rows.Line);
}
