using LabPipeline.Testing;

namespace LabPipeline.Science.Tests;

public sealed class ReferenceTableTests
{
    [Fact]
    public void Load_WhenCellsAreQuoted_KeepsTheCommaInside()
    {
        var table = ReferenceTable.Load("D_mass_loss_examples.csv");

        Assert.Equal("1250.0", table.Find("quantity", "peel loss, small batch").Text("before"));
    }

    [Fact]
    public void Load_WhenAQuoteIsDoubled_KeepsOne()
    {
        var table = ReferenceTable.Load("H_code128_symbols.csv");

        Assert.Equal("\"", table.Find("value", "2").Text("set_A"));
    }
}
