using System.Globalization;
using LabPipeline.Science.Quantities;

namespace LabPipeline.Board.Samples;

/// <summary>Values rounded once, for the eye: half to even, to the decimals the laboratory reports (common practice, no source).</summary>
internal static class ShownValue
{
    /// <summary>What is not listed keeps so many decimals at most.</summary>
    private const int MostDecimals = 6;

    private static readonly Dictionary<string, int> Decimals = new(StringComparer.Ordinal)
    {
        [QuantityCatalogue.Glucose.Name] = 3,
        [QuantityCatalogue.Sucrose.Name] = 2,
        [QuantityCatalogue.GlucoseSucroseRatio.Name] = 3,
        [QuantityCatalogue.SpecificGravity.Name] = 4,
        [QuantityCatalogue.DryMatter.Name] = 1,
        [QuantityCatalogue.Starch.Name] = 1,
        [QuantityCatalogue.PeelLoss.Name] = 1,
        [QuantityCatalogue.MeanCleanedSurface.Name] = 0,
        [QuantityCatalogue.StorageShrink.Name] = 1,
        [QuantityCatalogue.FryYield.Name] = 1,
        [QuantityCatalogue.MeanHunterL.Name] = 1,
        [QuantityCatalogue.MeanHunterA.Name] = 1,
        [QuantityCatalogue.MeanHunterB.Name] = 1,
        [QuantityCatalogue.MeanCielabL.Name] = 1,
        [QuantityCatalogue.MeanCielabA.Name] = 1,
        [QuantityCatalogue.MeanCielabB.Name] = 1,
        [QuantityCatalogue.DarkChips.Name] = 1,
        [QuantityCatalogue.MeanStemEndDefect.Name] = 1,
        [QuantityCatalogue.SevereStemEnd.Name] = 1,
        [QuantityCatalogue.UndesirableChips.Name] = 1,
    };

    /// <summary>A result of <paramref name="quantity"/>.</summary>
    public static string OfResult(string quantity, decimal value) => Rounded(quantity, value, 0);

    /// <summary>A standard deviation of <paramref name="quantity"/>, one decimal more than its results have.</summary>
    public static string OfSpread(string quantity, decimal value) => Rounded(quantity, value, 1);

    /// <summary>A reading, as the instrument gave it.</summary>
    public static string OfReading(decimal value) =>
        Math.Round(value, MostDecimals, MidpointRounding.ToEven).ToString("0.######", CultureInfo.InvariantCulture);

    private static string Rounded(string quantity, decimal value, int more)
    {
        if (!Decimals.TryGetValue(quantity, out var decimals))
        {
            return OfReading(value);
        }

        var format = "F" + (decimals + more).ToString(CultureInfo.InvariantCulture);
        return Math.Round(value, decimals + more, MidpointRounding.ToEven).ToString(format, CultureInfo.InvariantCulture);
    }
}
