using LabPipeline.Reporting.Figures;
using LabPipeline.Science.Quantities;

namespace LabPipeline.Reporting.Tests.Figures;

public sealed class UnitNamesTests
{
    [Theory]
    [InlineData("mean_hunter_l", "mean Hunter L")]
    [InlineData("cielab_a", "CIELAB a*")] // as CIE 15 writes it
    [InlineData("glucose_in_extract", "glucose in extract")]
    public void Spoken_WhenAQuantityIsNamed_WritesItAsASentenceDoes(string name, string spoken) =>
        Assert.Equal(spoken, UnitNames.Spoken(QuantityCatalogue.All.Single(quantity => quantity.Name == name)));
}
