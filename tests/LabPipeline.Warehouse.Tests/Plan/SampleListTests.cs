using LabPipeline.Warehouse.Plan;

namespace LabPipeline.Warehouse.Tests.Plan;

public sealed class SampleListTests
{
    [Fact]
    public void Of_TheExample_ListsEverySampleUnderItsHeader()
    {
        var lines = SampleList.Of(SpecExample.Plan).Split('\n');

        Assert.Equal("barcode,trial,pull,due_on,block,plot,clone,treatment,bay", lines[0]);
        Assert.Matches("^26EX01\\d{3}[0-9A-Z],EX-NITRO-26,1,2026-10-05,1,101,KT-104,nitrogen 240 kg/ha,B1$", lines[1]);
        Assert.Equal(26, lines.Length);
        Assert.Empty(lines[^1]);
    }

    [Fact]
    public void Of_LevelsWithACommaOrQuote_QuotesTheCell()
    {
        var plan = SpecExample.Load(SpecExample.Json.Replace("KT-118", "KT \\\"118\\\", late", StringComparison.Ordinal));

        Assert.Contains(",102,\"KT \"\"118\"\", late\",nitrogen 120 kg/ha,B1\n", SampleList.Of(plan), StringComparison.Ordinal);
    }
}
