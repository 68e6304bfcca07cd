using LabPipeline.Reporting.Exports;

namespace LabPipeline.Reporting.Tests.Exports;

/// <summary>docs/data-dictionary.md, which ships inside the program, against the views themselves.</summary>
public sealed class DataDictionaryTests
{
    [Theory]
    [InlineData("v_reading")]
    [InlineData("v_sample_result")]
    [InlineData("v_plot_pull")]
    [InlineData("v_pull_progress")]
    [InlineData("v_qc_alert")]
    [InlineData("v_fry_batch")]
    [InlineData("v_season_grid")]
    [InlineData("v_control_check")]
    public async Task Columns_OfEveryView_HaveAMeaning(string view)
    {
        await using var lab = await ExportLab.CreateAsync();

        var columns = await lab.ColumnsOfAsync(view);

        Assert.NotEmpty(columns);
        Assert.All(columns, column => Assert.NotEmpty(DataDictionary.Shipped.MeaningOf(view, column)));
    }

    [Fact]
    public void Meaning_OfAColumnNobodyDescribed_IsEmpty() =>
        Assert.Equal("", DataDictionary.Parse("### v_one: x\n\n| column | meaning |\n|---|---|\n| a, b | both |\n").MeaningOf("v_one", "c"));

    [Fact]
    public void Meaning_OfColumnsThatShareALine_IsThatOfTheLine()
    {
        var dictionary = DataDictionary.Parse("### v_one: x\n\n| column | meaning |\n|---|---|\n| a, b | `both` |\n");

        Assert.Equal(("both", "both", ""), (dictionary.MeaningOf("v_one", "a"), dictionary.MeaningOf("v_one", "b"), dictionary.MeaningOf("v_two", "a")));
    }
}
