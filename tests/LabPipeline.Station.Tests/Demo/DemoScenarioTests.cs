using LabPipeline.Intake.Reading;
using LabPipeline.Station.Demo;
using LabPipeline.Testing;
using LabPipeline.Warehouse.Plan;

namespace LabPipeline.Station.Tests.Demo;

public sealed class DemoScenarioTests(DemoSeason season) : IClassFixture<DemoSeason>
{
    private DemoScenario Scenario => season.Scenario;

    [Fact]
    public void Create_Twice_GivesTheSameBytes()
    {
        var again = DemoScenario.Create();

        Assert.Equal(Scenario.Files.Select(Describe), again.Files.Select(Describe));
        Assert.Equal(Scenario.Corrections.Select(Describe), again.Corrections.Select(Describe));
        Assert.Equal(Scenario.Documents, again.Documents);
        Assert.Equal(Scenario.Troubles.Select(trouble => trouble.Where), again.Troubles.Select(trouble => trouble.Where));
    }

    [Fact]
    public void Create_GivesASeasonOfTheStatedSize()
    {
        Assert.Equal(384, PlanSamples.Of(Scenario.Plan).Count);
        Assert.InRange(Scenario.Files.Count, 130, 260);
        Assert.InRange(season.InEffect.Count(reading => reading.Subject == ReadingSubject.Sample), 20_000, 30_000);
        Assert.All(Scenario.Files, file => Assert.InRange(file.WrittenAt.Year, 2025, 2026));
        Assert.Equal(Scenario.Files.Count, Scenario.Files.Select(file => file.Kind + file.Name).Distinct().Count());
    }

    [Fact]
    public void Create_WritesProfilesThatAreValid()
    {
        Assert.Equal(9, season.Profiles.Count);
        Assert.All(season.Profiles, entry => Assert.Empty(entry.Result.Faults.Select(fault => fault.Describe(entry.Result.Profile?.Name ?? entry.Kind))));
    }

    [Fact]
    public void Files_ReadByTheirProfiles_AreCompleteExceptThePlantedOnes()
    {
        var broken = season.Read.Where(file => file.Outcome.State != ReadState.Complete)
            .Select(file => $"{file.File.Name} {file.Outcome.State} {file.Outcome.Faults[0].Code}");

        Assert.Equal(
            [
                "analyser-a_2026-02-03_block2.csv Refused intake.value-not-positive",
                "fry-log_2026-05-05_block2.csv Held intake.last-line-cut",
                "peel-score_2025-12-01_block1.csv Refused intake.barcode-check",
                "peel-score_2026-05-07_block4.csv Refused intake.time-format",
                "peeling_2026-01-08_block4.tsv Refused intake.placeholder-value",
                "peeling_2026-04-06_block1.tsv Refused intake.number-format",
            ],
            broken.Order(StringComparer.Ordinal));
        Assert.All(season.Read, file => Assert.Equal(0, file.Outcome.ParkedRowCount));
    }

    [Fact]
    public void Corrections_ReadByTheirProfiles_AreComplete()
    {
        Assert.Equal(6, Scenario.Corrections.Count);
        Assert.All(Scenario.Corrections, file => Assert.Equal(ReadState.Complete, season.ReadFile(file).Outcome.State));
        Assert.All(Scenario.Corrections, file => Assert.Contains(Scenario.Files, other => other.Kind == file.Kind && other.Name == file.Name));
    }

    [Fact]
    public void Files_HoldOnePlantedBarcodeOutsideThePlan()
    {
        var planned = PlanSamples.Of(Scenario.Plan).Select(sample => sample.Barcode.Text).ToHashSet(StringComparer.Ordinal);

        var strangers = season.InEffect.Where(reading => reading.Barcode is { } barcode && !planned.Contains(barcode)).ToList();

        Assert.Equal(["24KM04017" + strangers[0].Barcode![^1]], strangers.Select(reading => reading.Barcode).Distinct());
        Assert.Single(strangers.Select(reading => reading.Line).Distinct());
    }

    [Fact]
    public void Files_SayTheSameForEveryKeyExceptTheEditedValue()
    {
        var conflicts = season.Readings.GroupBy(entry => DemoSeason.Key(entry.Reading))
            .Where(group => group.Select(entry => entry.Reading.Value).Distinct().Count() > 1)
            .Select(group => $"{group.Key.RowKey.Split('|')[0]} {group.First().Reading.Quantity.Name} {group.Last().File.Name}");

        Assert.Equal(["glucose_in_extract analyser-a_2026-03-02_block1_2.csv"], conflicts.Select(conflict => conflict[(conflict.IndexOf(' ', StringComparison.Ordinal) + 1)..]));
    }

    [Fact]
    public void Files_CopiedUnderAnotherName_AreTheSameBytes()
    {
        var copy = Scenario.Files.Single(file => file.Name.EndsWith("_copy.csv", StringComparison.Ordinal));
        var original = Scenario.Files.Single(file => file.Name == copy.Name.Replace("_copy", "", StringComparison.Ordinal));

        Assert.True(copy.Bytes.Span.SequenceEqual(original.Bytes.Span));
    }

    [Fact]
    public void Troubles_NameAPlaceThatExists()
    {
        var places = Scenario.Files.Select(file => file.Name)
            .Concat(PlanSamples.Of(Scenario.Plan).Select(sample => sample.Barcode.Text))
            .Concat(season.InEffect.Select(reading => reading.Run).Distinct())
            .Concat(Scenario.Plan.Pulls.Select(pull => FormattableString.Invariant($"Pull {pull.Number}")))
            .Append("colour meter")
            .ToHashSet(StringComparer.Ordinal);

        Assert.Equal(35, Scenario.Troubles.Count);
        Assert.All(Scenario.Troubles, trouble => Assert.Contains(trouble.Where.Split(", ")[0], places));
        Assert.Equal(Scenario.Troubles.Count, Scenario.Troubles.Select(trouble => trouble.Name).Distinct().Count());
    }

    [Fact]
    public async Task Plan_LoadedIntoAWarehouse_RegistersEverySample()
    {
        await using var scratch = await ScratchWarehouse.CreateAsync();

        var load = await scratch.Warehouse.WriteAsync(
            session => PlanStore.LoadAsync(session, Scenario.Plan, new DateTimeOffset(2025, 9, 20, 0, 0, 0, TimeSpan.Zero), "demo"),
            TestContext.Current.CancellationToken);

        Assert.Equal(384, load.NewSamples);
    }

    private static string Describe(DemoFile file) => $"{file.Kind}/{file.Name} {file.WrittenAt:O} {Convert.ToHexString(System.Security.Cryptography.SHA256.HashData(file.Bytes.Span))}";
}
