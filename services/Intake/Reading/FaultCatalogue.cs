using System.Globalization;
using LabPipeline.Hosting;
using LabPipeline.Intake.Text;
using LabPipeline.Science.Barcodes;

namespace LabPipeline.Intake.Reading;

/// <summary>The words of every fault a file can have. All of them are written here and nowhere else.</summary>
public static class FaultCatalogue
{
    private const string CheckExport = "check the export settings of the instrument or its profile";
    private const string CheckDecimal = "check the decimal setting of the instrument or its profile";
    private const string CheckProfile = "check that this is the profile of this instrument";
    private const string ExportAgain = "export the file again";
    private const string CheckClock = "check the clock and date format of the instrument or its profile";
    private const string ScanAgain = "scan the label again";

    // Found is a description of ours for these; for all others it is text of the file and shown in quotes.
    private static readonly HashSet<string> Described =
    [
        FaultCode.EmptyFile, FaultCode.HeaderOnly, FaultCode.HeaderMissing, FaultCode.Undecodable, FaultCode.CutCharacter, FaultCode.NullCharacter,
        FaultCode.ReplacementCharacter, FaultCode.MarkContradictsEncoding, FaultCode.MarkMissing, FaultCode.LineTooLong, FaultCode.CellTooLong, FaultCode.KeyTooLong,
        FaultCode.TooManyColumns, FaultCode.RaggedRow, FaultCode.MissingColumn, FaultCode.TrailerMissing, FaultCode.ColourTextCount,
    ];

    internal static string Describe(Fault fault, string fileName)
    {
        var place = VisibleText.Of(fileName);
        var where = fault switch
        {
            { Line: 0 } => place,
            { ColumnName: null } => Invariant($"{place} line {fault.Line}"),
            { Column: 0 } => Invariant($"{place} line {fault.Line}, '{fault.ColumnName}'"),
            _ => Invariant($"{place} line {fault.Line}, column {fault.Column} '{fault.ColumnName}'"),
        };
        var found = fault.Found.Length == 0 ? "nothing" : Described.Contains(fault.Code) ? fault.Found : $"'{fault.Found}'";
        return $"{where}: found {found}; expected {fault.Expected}; {fault.Advice}.";
    }

    internal static Fault EmptyFile() =>
        At(CellPlace.File, FaultCode.EmptyFile, "", "rows of readings", ExportAgain);

    internal static Fault HeaderOnly(int line) =>
        At(new(line), FaultCode.HeaderOnly, "no rows", "rows of readings", ExportAgain);

    internal static Fault HeaderMissing(int line, int headerLine) =>
        At(new(line), FaultCode.HeaderMissing, Invariant($"the end of the file before line {headerLine}"), "the column names there", CheckProfile);

    internal static Fault Undecodable(DecodeProblem problem, long offset, TextEncoding encoding, int line)
    {
        var name = EncodingNames.NameOf(encoding);
        return problem switch
        {
            DecodeProblem.NullCharacter => At(new(line), FaultCode.NullCharacter, Invariant($"a null character at byte {offset}"), $"text in {name}", CheckExport),
            DecodeProblem.ReplacementCharacter => At(
                new(line), FaultCode.ReplacementCharacter, Invariant($"a replacement character (U+FFFD) at byte {offset}"), "the character it stands for", ExportAgain),
            DecodeProblem.MarkContradictsEncoding => At(
                CellPlace.File, FaultCode.MarkContradictsEncoding, "a byte order mark of another encoding", $"text in {name}", CheckExport),
            DecodeProblem.MarkMissing => At(CellPlace.File, FaultCode.MarkMissing, "no byte order mark", "one of utf-16", "declare utf-16le or utf-16be in the profile"),
            DecodeProblem.CutCharacter => At(new(line), FaultCode.CutCharacter, Invariant($"part of a character at byte {offset}"), $"whole characters in {name}", ExportAgain),
            _ => At(new(line), FaultCode.Undecodable, Invariant($"bytes that are no {name} at byte {offset}"), $"text in {name}", CheckExport),
        };
    }

    internal static Fault LineTooLong(int line, int limit) =>
        At(new(line), FaultCode.LineTooLong, Invariant($"a row of more than {limit} characters"), "shorter rows", CheckProfile);

    internal static Fault CellTooLong(CellPlace place, int length, int limit) =>
        At(place, FaultCode.CellTooLong, Invariant($"{length} characters"), Invariant($"at most {limit}"), CheckProfile);

    internal static Fault KeyTooLong(int line, int length, int limit) =>
        At(new(line), FaultCode.KeyTooLong, Invariant($"a row key of {length} characters"), Invariant($"at most {limit}"), "name fewer or shorter columns as the row key");

    internal static Fault TooManyColumns(int line, int limit) =>
        At(new(line), FaultCode.TooManyColumns, Invariant($"more than {limit} columns"), Invariant($"at most {limit}"), CheckProfile);

    internal static Fault UnclosedQuote(int line, ReadOnlySpan<char> text) =>
        At(new(line), FaultCode.UnclosedQuote, text, "a closing quote", ExportAgain);

    internal static Fault MisplacedQuote(int line, ReadOnlySpan<char> text) =>
        At(new(line), FaultCode.MisplacedQuote, text, "quotes only around whole cells", CheckExport);

    internal static Fault LastLineCut(int line, ReadOnlySpan<char> text) =>
        At(new(line), FaultCode.LastLineCut, text, "a line end after the last line", "wait until the file is written to its end");

    internal static Fault TrailerMissing(int line, string trailer) =>
        At(new(line), FaultCode.TrailerMissing, "the end of the file", $"a last line beginning with '{trailer}'", "wait until the file is written to its end");

    internal static Fault TextAfterTrailer(int line, ReadOnlySpan<char> text) =>
        At(new(line), FaultCode.TextAfterTrailer, text, "nothing after the last line", ExportAgain);

    internal static Fault RaggedRow(int line, int found, int expected) =>
        At(new(line), FaultCode.RaggedRow, Invariant($"{found} cells"), Invariant($"{expected}"), ExportAgain);

    internal static Fault ShortLine(int line, int found, int expected) =>
        At(new(line), FaultCode.RaggedRow, Invariant($"{found} characters"), Invariant($"{expected}"), ExportAgain);

    internal static Fault TextBetweenFields(int line, ReadOnlySpan<char> text) =>
        At(new(line), FaultCode.TextBetweenFields, text, "blanks outside the fields", CheckProfile);

    internal static Fault MissingColumn(int line, string name) =>
        At(new(line), FaultCode.MissingColumn, "no such column", $"column '{name}'", CheckProfile);

    internal static Fault UnknownColumn(CellPlace place) =>
        At(place, FaultCode.UnknownColumn, place.ColumnName, "only columns the profile names", "name it in the profile or list it under ignoredColumns");

    internal static Fault DuplicateColumn(CellPlace place) =>
        At(place, FaultCode.DuplicateColumn, place.ColumnName, "every column name once", CheckExport);

    internal static Fault KeyFormat(int line, ReadOnlySpan<char> text, string separator) =>
        At(new(line), FaultCode.KeyFormat, text, $"a key, '{separator}' and a value", CheckExport);

    internal static Fault DuplicateKey(CellPlace place) =>
        At(place, FaultCode.DuplicateKey, place.ColumnName, "every key once in a block", ExportAgain);

    internal static Fault ColourTextFormat(int line, ReadOnlySpan<char> text, string expected) =>
        At(new(line), FaultCode.ColourTextFormat, text, expected, CheckExport);

    internal static Fault ColourTextCount(int line, long found, string what, long declared) =>
        At(new(line), FaultCode.ColourTextCount, Invariant($"{found} {what}"), Invariant($"the {declared} declared"), ExportAgain);

    internal static Fault MissingCell(CellPlace place) =>
        At(place, FaultCode.MissingCell, "", "a text", "complete the row at the instrument and export it again");

    internal static Fault MissingValue(CellPlace place, ReadOnlySpan<char> text) =>
        At(place, FaultCode.MissingValue, text, "a value in every row", "measure again, or allow missing values in the profile");

    internal static Fault PlaceholderValue(CellPlace place, ReadOnlySpan<char> text) =>
        At(place, FaultCode.PlaceholderValue, text, "a measured value", "measure again: the instrument writes this when it has no value");

    internal static Fault Number(CellPlace place, ReadOnlySpan<char> text, NumberFault fault, NumberFormat format) => fault switch
    {
        NumberFault.BadGrouping => At(place, FaultCode.NumberFormat, text, "groups of three digits", CheckDecimal),
        NumberFault.ExponentNotAllowed => At(place, FaultCode.NumberFormat, text, "a number without exponent", CheckDecimal),
        NumberFault.TooManyDigits => At(place, FaultCode.NumberSize, text, "at most 15 significant digits", CheckExport),
        NumberFault.TooManyDecimals => At(place, FaultCode.NumberSize, text, "at most 12 decimals", CheckExport),
        NumberFault.TooLarge => At(place, FaultCode.NumberSize, text, "a number below 10^15", CheckExport),
        _ => At(place, FaultCode.NumberFormat, text, format.DecimalMark == ',' ? "a number with decimal comma" : "a number with decimal point", CheckDecimal),
    };

    internal static Fault Count(CellPlace place, ReadOnlySpan<char> text) =>
        At(place, FaultCode.CountFormat, text, "a whole number from 0 to 9999", CheckExport);

    internal static Fault ValueNotPositive(CellPlace place, ReadOnlySpan<char> text, string quantity) =>
        At(place, FaultCode.ValueNotPositive, text, $"{quantity} above 0", "measure or enter it again");

    internal static Fault ValueOutsideLimits(CellPlace place, ReadOnlySpan<char> text, decimal? lowest, decimal? highest, string unit)
    {
        var bounds = (lowest, highest) switch
        {
            ({ } low, { } high) => Invariant($"{low} to {high} {unit}"),
            ({ } low, null) => Invariant($"at least {low} {unit}"),
            _ => Invariant($"at most {highest} {unit}"),
        };
        return At(place, FaultCode.ValueOutsideLimits, text, bounds, "measure again, or check the unit set at the instrument");
    }

    internal static Fault UnknownUnit(CellPlace place, ReadOnlySpan<char> text, string quantity, string unit) =>
        At(place, FaultCode.UnknownUnit, text, $"a unit of {quantity} such as {unit}", "check the unit set at the instrument");

    internal static Fault UnknownQuantity(CellPlace place, ReadOnlySpan<char> text) =>
        At(place, FaultCode.UnknownQuantity, text, "a name in the profile's map", "add it to the map or to its ignored names");

    internal static Fault Time(CellPlace place, ReadOnlySpan<char> text, TimestampFault fault, string formats, string zone) => fault switch
    {
        TimestampFault.Impossible => At(place, FaultCode.TimeImpossible, text, "a day and time that exist, in the years 1900 to 2199", CheckClock),
        TimestampFault.Skipped => At(place, FaultCode.TimeSkipped, text, $"a time that exists in {zone}: clocks were put forward over it", CheckClock),
        TimestampFault.Ambiguous => At(
            place, FaultCode.TimeAmbiguous, text, $"a time that happened once in {zone}: clocks were put back over it", "declare earlier or later in the profile, or export with offset"),
        _ => At(place, FaultCode.TimeFormat, text, $"a time written {formats}", CheckClock),
    };

    // The right character is not named: whoever types it in would defeat the check.
    internal static Fault BarcodeCheck(CellPlace place, ReadOnlySpan<char> text) =>
        At(place, FaultCode.BarcodeCheck, text, "a sample barcode whose last character belongs to the rest", ScanAgain);

    internal static Fault BarcodeFormat(CellPlace place, ReadOnlySpan<char> text) =>
        At(place, FaultCode.BarcodeFormat, text, Invariant($"a sample barcode of {SampleBarcode.ShortestLength} to {SampleBarcode.LongestLength} letters and digits without I, O and Q"), ScanAgain);

    internal static Fault BarcodeHalf(CellPlace place, ReadOnlySpan<char> text, TuberHalf expected) => At(
        place, FaultCode.BarcodeHalf, text, expected == TuberHalf.Sugar ? "a code with -S, of the half for sugar" : "a code with -F, of the half for frying",
        "find out which half was measured: swapped halves must be measured again, a label on the wrong half only scanned again");

    private static Fault At(CellPlace place, string code, ReadOnlySpan<char> found, string expected, string advice) => new(
        code, place.Line, place.Column, place.ColumnName is null ? null : VisibleText.Of(place.ColumnName), VisibleText.Of(found), expected, advice);

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
