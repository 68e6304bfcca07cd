using LabPipeline.Reporting.Planning;
using LabPipeline.Reporting.Tests.Exports;
using LabPipeline.Science.Quantities;

namespace LabPipeline.Reporting.Tests.Planning;

public sealed class SeasonVarianceStoreTests
{
    private static readonly WantedDifference OnePercent = new(1, IsRatio: false);

    [Fact]
    public async Task ListAsync_OfATrialWithResults_GivesTheResidualOfEachPull()
    {
        await using var lab = await ExportLab.CreateAsync();
        await StoreAsync(lab, 1, (20.1m, 21.4m, 19.2m, 22.0m));

        var variance = Assert.Single((await lab.ReadAsync(session => SeasonVarianceStore.ListAsync(session, ExportLab.TrialCode, QuantityCatalogue.DryMatter, OnePercent)))!);

        // Worked by hand: residual sum of squares of a 2 x 2 table = (20.1 - 21.4 - 19.2 + 22.0)^2 / 4 = 1.5^2 / 4, 1 df.
        Assert.Equal(0.5625, variance.Variance, 1e-12);
        Assert.Equal((1, 1.0, 4, 0), (variance.PullNo, variance.Df, variance.Plots, variance.Censored));
    }

    [Fact]
    public async Task ListAsync_ForARatio_WorksOnLogarithms()
    {
        await using var lab = await ExportLab.CreateAsync();
        await StoreAsync(lab, 3, (1m, 2m, 4m, 4m));

        var variance = Assert.Single((await lab.ReadAsync(session => SeasonVarianceStore.ListAsync(session, ExportLab.TrialCode, QuantityCatalogue.DryMatter, new WantedDifference(1.25, IsRatio: true))))!);

        // Worked by hand: (ln 1 - ln 2 - ln 4 + ln 4)^2 / 4 = (ln 2)^2 / 4.
        Assert.Equal(Math.Log(2) * Math.Log(2) / 4, variance.Variance, 1e-12);
    }

    [Fact]
    public async Task ListAsync_WhereNothingWasMeasured_IsEmptyAndOfAnUnknownTrialNull()
    {
        await using var lab = await ExportLab.CreateAsync();

        Assert.Empty((await lab.ReadAsync(session => SeasonVarianceStore.ListAsync(session, ExportLab.TrialCode, QuantityCatalogue.DryMatter, OnePercent)))!);
        Assert.Null(await lab.ReadAsync(session => SeasonVarianceStore.ListAsync(session, "NOPE", QuantityCatalogue.DryMatter, OnePercent)));
    }

    [Fact]
    public async Task ListAsync_OfOneBlockAlone_IsEmpty()
    {
        await using var lab = await ExportLab.CreateAsync();
        await lab.StoreResultAsync(lab.Barcode("101", 1), QuantityCatalogue.DryMatter, 20m);
        await lab.StoreResultAsync(lab.Barcode("102", 1), QuantityCatalogue.DryMatter, 21m);

        Assert.Empty((await lab.ReadAsync(session => SeasonVarianceStore.ListAsync(session, ExportLab.TrialCode, QuantityCatalogue.DryMatter, OnePercent)))!);
    }

    /// <summary>
    /// Normal approximation n = 2 s^2 (z(0.975) + z(0.8))^2 / d^2 with 1.960 and 0.842 (any table): 15.7 blocks for d = s; with a t of many degrees of
    /// freedom one more at most.
    /// </summary>
    [Fact]
    public void BlockAdvice_OfADifferenceAsLargeAsTheError_NeedsAboutSixteenBlocks()
    {
        var advice = BlockAdvice.Of(new SeasonVariance(1, "Residual", 4, 33, 48, 0), 12, new WantedDifference(2, IsRatio: false), 0.8, 0.05);

        Assert.InRange(advice.Blocks!.Value, 16, 17);
        Assert.Equal([3, 4, 5, 6], advice.Powers.Select(entry => entry.Blocks));
        Assert.True(advice.Powers.Zip(advice.Powers.Skip(1)).All(pair => pair.First.Power < pair.Second.Power));
    }

    [Fact]
    public void BlockAdvice_OfAHopelessDifference_SaysNone() =>
        Assert.Null(BlockAdvice.Of(new SeasonVariance(1, "Residual", 100, 33, 48, 0), 12, new WantedDifference(0.01, IsRatio: false), 0.8, 0.05).Blocks);

    private static async Task StoreAsync(ExportLab lab, int pull, (decimal A, decimal B, decimal C, decimal D) values)
    {
        await lab.StoreResultAsync(lab.Barcode("101", pull), QuantityCatalogue.DryMatter, values.A);
        await lab.StoreResultAsync(lab.Barcode("102", pull), QuantityCatalogue.DryMatter, values.B);
        await lab.StoreResultAsync(lab.Barcode("201", pull), QuantityCatalogue.DryMatter, values.C);
        await lab.StoreResultAsync(lab.Barcode("202", pull), QuantityCatalogue.DryMatter, values.D);
    }
}
