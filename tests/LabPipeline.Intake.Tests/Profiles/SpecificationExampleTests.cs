using System.Text;
using LabPipeline.Intake.Profiles;
using LabPipeline.Intake.Reading;
using LabPipeline.Intake.Tests.Reading;

namespace LabPipeline.Intake.Tests.Profiles;

/// <summary>The example in docs/specs/intake-profile.md is a good profile and reads the file printed beside it.</summary>
public sealed class SpecificationExampleTests
{
    [Fact]
    public void Example_WhenParsed_HasNoFault() => Assert.Empty(ProfileDocument.Parse(Block("json"), "example").Describe());

    [Fact]
    public void Example_WhenItReadsItsFile_GivesTheReadingsPrinted()
    {
        var profile = ProfileDocument.Parse(Block("json"), "example").Profile!;

        var (outcome, readings) = SampleFiles.Read(profile, Block("text"));

        Assert.Empty(outcome.Faults.Select(fault => fault.Describe("example.csv")));
        Assert.Equal((ReadState.Complete, 4L, 8L, 2L), (outcome.State, outcome.Rows, outcome.Readings, outcome.ControlReadings));
        Assert.Equal(
            [
                ("LOW|||1", "glucose_in_extract", 0.0502m, false), ("LOW|||1", "extract_volume", 250m, false),
                ("S26P01T03R2C|1|1|2", "glucose_in_extract", 0.092m, false), ("S26P01T03R2C|1|1|2", "extract_fresh_mass", 50.02m, false), ("S26P01T03R2C|1|1|2", "extract_volume", 250m, false),
                ("S26P01T03R2C|1|2|3", "glucose_in_extract", 0.005m, true), ("S26P01T03R2C|1|2|3", "extract_fresh_mass", 50.02m, false), ("S26P01T03R2C|1|2|3", "extract_volume", 250m, false),
                ("S26P01T03R3A|1|1|4", "extract_fresh_mass", 49.87m, false), ("S26P01T03R3A|1|1|4", "extract_volume", 250m, false),
            ],
            readings.Select(reading => (reading.RowKey.Text, reading.Quantity.Name, reading.Value, reading.BelowLimit)));
        Assert.Equal(new DateTimeOffset(2026, 1, 14, 12, 30, 5, TimeSpan.Zero), readings[0].MeasuredAt);
        Assert.Equal("14.01.2026 13:31", readings[2].MeasuredAtRaw.Text);
    }

    private static string Block(string language)
    {
        var text = File.ReadAllText(Path.Combine(Root(), "docs", "specs", "intake-profile.md"), Encoding.UTF8).ReplaceLineEndings("\n");
        var start = text.IndexOf($"```{language}\n", StringComparison.Ordinal) + language.Length + 4;
        return text[start..text.IndexOf("```", start, StringComparison.Ordinal)];
    }

    private static string Root()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder!.FullName, "LabPipeline.sln")))
        {
            folder = folder.Parent;
        }

        return folder.FullName;
    }
}
