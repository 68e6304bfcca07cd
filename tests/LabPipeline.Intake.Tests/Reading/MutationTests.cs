using System.Text;
using LabPipeline.Intake.Profiles;
using LabPipeline.Intake.Reading;
using LabPipeline.Intake.Tests.Text;

namespace LabPipeline.Intake.Tests.Reading;

/// <summary>Every single change of one byte in a file of each layout.</summary>
/// <remarks>
/// A wrong number is a stored value that neither the untouched file holds for that sample and quantity, nor the changed row itself spells out in
/// full: a digit changed into another gives another good number, and nobody could tell.
/// </remarks>
public sealed class MutationTests
{
    private static readonly byte[] Replacements = [.. "0917.,;-+<e# \"\t\n\r/x"u8, 0x00, 0x1A, 0x80, 0xC3, 0xE2, 0xFF];

    public static TheoryData<string> Layouts => ["delimited", "key-value", "cgats", "fixed-width", "one-value"];

    [Theory]
    [Shows(22)]
    [MemberData(nameof(Layouts))]
    public void Read_WhenAnyOneByteIsChangedLostOrDoubled_NeverGivesAWrongNumber(string layout)
    {
        var (profile, bytes) = FileOf(layout);
        var whole = SampleFiles.Read(profile, bytes).Readings;
        var (read, complete) = (0, 0);
        for (var at = 0; at < bytes.Length; at++)
        {
            foreach (var mutant in Mutants(bytes, at))
            {
                var (outcome, readings) = SampleFiles.Read(profile, mutant);
                read++;
                if (outcome.State == ReadState.Complete)
                {
                    complete++;
                    Assert.Empty(Wrong(profile, mutant, whole, readings));
                }
            }
        }

        Assert.InRange(complete, 1, read - 1);
    }

    private static IEnumerable<byte[]> Mutants(byte[] bytes, int at)
    {
        foreach (var replacement in Replacements.Where(replacement => replacement != bytes[at]))
        {
            yield return [.. bytes[..at], replacement, .. bytes[(at + 1)..]];
        }

        yield return [.. bytes[..at], .. bytes[(at + 1)..]];
        yield return [.. bytes[..at], bytes[at], .. bytes[at..]];
    }

    private static IEnumerable<string> Wrong(Profile profile, byte[] mutant, IReadOnlyList<ParsedReading> whole, IReadOnlyList<ParsedReading> readings)
    {
        var lines = Lines(mutant);
        foreach (var reading in readings)
        {
            // Rows of some layouts span lines.
            var row = string.Join('\n', lines.Skip(reading.Line - 1).Take(5));
            var isKnown = whole.Any(other => other.Barcode == reading.Barcode && other.Quantity == reading.Quantity && other.Value == reading.Value && other.RawValue == reading.RawValue);
            if (!row.Contains(reading.RawValue.ToString(), StringComparison.Ordinal) || !(isKnown || IsSpeltOut(profile, reading, whole)))
            {
                yield return $"{reading.Quantity.Name} {reading.Value} from '{reading.RawValue}' on line {reading.Line}: {row}";
            }
        }
    }

    /// <summary>An independent reading of the raw text gives the stored value, by the conversion its unit has in the untouched file.</summary>
    private static bool IsSpeltOut(Profile profile, ParsedReading reading, IReadOnlyList<ParsedReading> whole)
    {
        var model = whole.FirstOrDefault(other => other.Quantity == reading.Quantity && other.RawUnit == reading.RawUnit);

        // Only the unit changed: its conversion has tests of its own.
        return NumberOf(profile, reading.RawValue.ToString()) is { } number
            && (model.Quantity is null || Math.Abs(reading.Value - (number * model.Value / NumberOf(profile, model.RawValue.ToString())!.Value)) <= 1e-9m * Math.Abs(reading.Value));
    }

    private static decimal? NumberOf(Profile profile, string raw) =>
        NumberReference.Parse(raw.TrimStart('<').Split([' ', '\t'], StringSplitOptions.RemoveEmptyEntries).FirstOrDefault("").TrimEnd("glbk".ToCharArray()), profile.Text.Numbers);

    private static string[] Lines(byte[] bytes) => Encoding.Latin1.GetString(bytes).ReplaceLineEndings("\n").Split('\n');

    private static (Profile Profile, byte[] Bytes) FileOf(string layout)
    {
        var (profile, text) = layout switch
        {
            "delimited" => (SampleProfiles.Sugar(), SampleFiles.Sugar),
            "key-value" => (SampleProfiles.Balance(), SampleFiles.Balance),
            "cgats" => (SampleProfiles.Colour(), SampleFiles.Colour),
            "fixed-width" => (SampleProfiles.FixedWidth(), SampleFiles.FixedWidth),
            _ => (SampleProfiles.OneValue(), SampleFiles.OneValue),
        };
        return (profile, SampleFiles.Bytes(profile, text));
    }
}
