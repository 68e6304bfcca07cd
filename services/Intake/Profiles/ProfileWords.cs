using LabPipeline.Intake.Reading;
using LabPipeline.Intake.Text;
using LabPipeline.Science.Quantities;

namespace LabPipeline.Intake.Profiles;

/// <summary>The words of the profile schema for each choice.</summary>
internal static class ProfileWords
{
    public static readonly Dictionary<string, QuantityKind> Kinds = new()
    {
        ["sugar"] = QuantityKind.Sugar,
        ["balance"] = QuantityKind.Balance,
        ["colour"] = QuantityKind.Colour,
        ["bench"] = QuantityKind.Bench,
    };

    public static readonly Dictionary<string, ReadingSubject> Subjects = new()
    {
        ["sample"] = ReadingSubject.Sample,
        ["control"] = ReadingSubject.Control,
        ["fry-batch"] = ReadingSubject.FryBatch,
    };

    public static readonly Dictionary<string, Completeness> Completeness = new()
    {
        ["renamed-in"] = Profiles.Completeness.RenamedIn,
        ["done-file"] = Profiles.Completeness.DoneFile,
        ["final-newline"] = Profiles.Completeness.FinalNewline,
        ["trailer"] = Profiles.Completeness.Trailer,
    };

    public static readonly Dictionary<string, TextEncoding> Encodings = EncodingNames.All.ToDictionary(name => name, name => EncodingNames.Find(name)!.Value);

    public static readonly Dictionary<string, TextLayout> Layouts = new()
    {
        ["delimited"] = TextLayout.Delimited,
        ["fixed-width"] = TextLayout.FixedWidth,
        ["key-value-blocks"] = TextLayout.KeyValueBlocks,
        ["cgats"] = TextLayout.Cgats,
    };

    public static readonly Dictionary<string, char> DecimalMarks = new()
    {
        ["point"] = '.',
        ["comma"] = ',',
    };

    public static readonly Dictionary<string, GroupMark> GroupMarks = new()
    {
        ["none"] = GroupMark.None,
        ["point"] = GroupMark.Point,
        ["comma"] = GroupMark.Comma,
        ["space"] = GroupMark.Space,
        ["apostrophe"] = GroupMark.Apostrophe,
    };

    public static readonly Dictionary<string, AmbiguousTime> AmbiguousTimes = new()
    {
        ["refuse"] = AmbiguousTime.Refuse,
        ["earlier"] = AmbiguousTime.Earlier,
        ["later"] = AmbiguousTime.Later,
    };

    public static readonly Dictionary<string, UnknownColumns> UnknownColumns = new()
    {
        ["refuse"] = Profiles.UnknownColumns.Refuse,
        ["ignore"] = Profiles.UnknownColumns.Ignore,
    };

    public static readonly Dictionary<string, BadRows> BadRows = new()
    {
        ["refuse-file"] = Profiles.BadRows.RefuseFile,
        ["park"] = Profiles.BadRows.Park,
    };

    public static readonly Dictionary<string, bool> MissingValues = new()
    {
        ["refuse"] = false,
        ["allow"] = true,
    };

    public static readonly Dictionary<string, bool> Placeholders = new()
    {
        ["refuse"] = false,
        ["missing"] = true,
    };
}
