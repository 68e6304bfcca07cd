using System.Globalization;
using System.Text;
using LabPipeline.Intake.Profiles;
using LabPipeline.Science.Barcodes;
using NodaTime;

namespace LabPipeline.Board.Bench;

/// <summary>One kind of bench sheet: the file it becomes, with the same columns a spreadsheet or a scoring program would write.</summary>
public sealed class BenchSheet
{
    public const int MostRows = 500;

    private const int LongestCell = 24;

    private readonly string _filePrefix;
    private readonly string _codePrefix;
    private readonly string _personColumn;
    private readonly string _timeColumn;

    private BenchSheet(string name, string filePrefix, string codePrefix, string personColumn, string timeColumn, params string[] columns)
    {
        Name = name;
        Columns = columns;
        _filePrefix = filePrefix;
        _codePrefix = codePrefix;
        _personColumn = personColumn;
        _timeColumn = timeColumn;
    }

    public static IReadOnlyList<BenchSheet> All { get; } =
    [
        new("peel", "peel-score", "PS", "judge", "judged_at", "sheet", "sample", "cleaned_pct", "judge", "judged_at"),
        new("fry", "fry-log", "F", "cook", "started", "batch", "started", "oil_start_f", "oil_lowest_f", "oil_after_f", "time_s", "cook"),
        new("chips", "chips", "CH", "scorer", "scored_at", "sheet", "sample", "tuber", "slice", "stem_end", "greening", "hollow_heart", "scorer", "scored_at"),
    ];

    public string Name { get; }

    public IReadOnlyList<string> Columns { get; }

    public static BenchSheet? Find(string name) => All.FirstOrDefault(sheet => sheet.Name == name);

    /// <summary>The name of the entry's file; the same entry always has the same.</summary>
    public string FileNameOf(BenchEntry entry) => $"{_filePrefix}_{entry.Rows[0].At:yyyy-MM-dd}_{Short(entry)}.csv";

    /// <summary>The entry as text, its times written as <paramref name="time"/> reads them; or what is wrong with it.</summary>
    /// <returns>Faults, and a text that means nothing when there are any.</returns>
    public (string Text, IReadOnlyList<string> Faults) Write(BenchEntry entry, TimeRule? time)
    {
        var faults = new List<string>();
        var text = new StringBuilder().AppendJoin(',', Columns).Append('\n');
        foreach (var (number, row) in entry.Rows.Index())
        {
            text.AppendJoin(',', Columns.Select(column => Cell(entry, row, number + 1, column, time, faults))).Append('\n');
        }

        return (text.ToString(), faults);
    }

    private static string Short(BenchEntry entry) => entry.Id.ToString("N", CultureInfo.InvariantCulture)[..8];

    private string Cell(BenchEntry entry, BenchRow row, int number, string column, TimeRule? time, List<string> faults)
    {
        if (column == _personColumn)
        {
            return entry.By;
        }

        if (column == _timeColumn)
        {
            return Written(row.At, time);
        }

        var given = row.Cells.GetValueOrDefault(column, "").Trim();
        return column switch
        {
            "sheet" => $"{_codePrefix}{entry.Rows[0].At:yyMMdd}-{Short(entry)}",
            "batch" when given.Length == 0 => string.Create(CultureInfo.InvariantCulture, $"{_codePrefix}{row.At:yyMMdd}-{Short(entry)}-{number}"),
            "sample" => Barcode(given, number, faults),
            _ => Plain(given, number, column, faults),
        };
    }

    private static string Barcode(string given, int number, List<string> faults)
    {
        var (read, half) = HalfCode.Read(given);
        if (read.Barcode is null)
        {
            faults.Add(string.Create(CultureInfo.InvariantCulture, $"Row {number}, sample: {read.Explanation}"));
        }

        // The half stays: whether it may stand in this sheet is the profile's judgement.
        return read.Barcode is { } barcode ? HalfCode.Write(barcode.Text, half) : "";
    }

    /// <summary>What a cell may hold needs no quoting anywhere; the rest of the judgement is the profile's.</summary>
    private static string Plain(string given, int number, string column, List<string> faults)
    {
        if (given.Length > LongestCell || !given.All(letter => char.IsAsciiLetterOrDigit(letter) || letter is '.' or '-' or '_' or '/'))
        {
            faults.Add(string.Create(CultureInfo.InvariantCulture, $"Row {number}, {column}: found '{given}'; expected letters, digits, dot, dash or slash, at most {LongestCell}."));
        }

        return given;
    }

    private static string Written(DateTimeOffset at, TimeRule? time)
    {
        var local = Instant.FromDateTimeOffset(at).InZone(time?.Zone ?? DateTimeZone.Utc).ToDateTimeUnspecified();
        return local.ToString(time?.Formats[0].Text ?? "yyyy-MM-dd HH:mm:ss", CultureInfo.InvariantCulture);
    }
}
