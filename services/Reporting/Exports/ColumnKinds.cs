using System.Globalization;

namespace LabPipeline.Reporting.Exports;

/// <summary>Kinds of the columns of exports by their names. Rows do not tell: a column of one pull can be empty, and SQLite types its cells one by one.</summary>
internal static class ColumnKinds
{
    private static readonly HashSet<string> Texts =
    [
        "barcode", "trial_code", "plot_code", "block", "main_plot", "clone", "treatment", "bay_code", "quantity", "unit", "raw_value", "raw_unit", "extract",
        "instrument", "run", "row_key", "method", "operator", "measured_as_written", "file_name", "file_sha256", "standing", "doubt_cause", "excluded_why", "excluded_by",
    ];

    private static readonly HashSet<string> Wholes =
    [
        "season", "pull_no", "samples", "glucose_below_limit", "sucrose_below_limit", "reading_id", "below_limit", "replicate", "tuber", "slice", "file_line",
        "in_doubt", "glucose_in_doubt", "sucrose_in_doubt", "specific_gravity_in_doubt", "peel_loss_in_doubt", "colour_in_doubt", "defects_in_doubt",
    ];

    private static readonly HashSet<string> Numbers =
    [
        "value", "glucose_mg_per_g", "sucrose_mg_per_g", "glucose_sucrose_ratio", "specific_gravity", "dry_matter_pct", "starch_pct", "peel_loss_pct",
        "cleaned_surface_pct", "hunter_l", "hunter_a", "hunter_b", "cielab_l", "cielab_a", "cielab_b", "dark_chips_pct", "stem_end_defect_mean",
        "stem_end_severe_pct", "undesirable_chips_pct", "storage_shrink_pct", "fry_yield_pct",
    ];

    /// <exception cref="InvalidOperationException">A column nobody has classified.</exception>
    public static ColumnKind Of(string column) =>
        Texts.Contains(column) ? ColumnKind.Text
        : Wholes.Contains(column) ? ColumnKind.Whole
        : Numbers.Contains(column) ? ColumnKind.Number
        : column.EndsWith("_utc", StringComparison.Ordinal) ? ColumnKind.Instant
        : column.EndsWith("_on", StringComparison.Ordinal) ? ColumnKind.Date
        : throw new InvalidOperationException($"Column {column} has no kind; exports of typed files need one. Add it to {nameof(ColumnKinds)}.");

    /// <summary>A cell in the type of its kind; null where there is nothing.</summary>
    public static object? Convert(ColumnKind kind, object cell) => cell is DBNull ? null : kind switch
    {
        ColumnKind.Text => (string)cell,
        ColumnKind.Whole => System.Convert.ToInt64(cell, CultureInfo.InvariantCulture),
        ColumnKind.Number => System.Convert.ToDouble(cell, CultureInfo.InvariantCulture),
        ColumnKind.Date => cell is string day ? DateTime.ParseExact(day, "yyyy-MM-dd", CultureInfo.InvariantCulture) : (DateTime)cell,
        _ => cell is string text
            ? DateTime.ParseExact(text, "yyyy-MM-ddTHH:mm:ss.fffZ", CultureInfo.InvariantCulture, DateTimeStyles.AdjustToUniversal | DateTimeStyles.AssumeUniversal)
            : ((DateTimeOffset)cell).UtcDateTime,
    };
}
