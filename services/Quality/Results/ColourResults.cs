using System.Globalization;
using LabPipeline.Science.Quantities;

namespace LabPipeline.Quality.Results;

/// <summary>Mean colour of a sample's chips on both scales, and the share of dark chips.</summary>
/// <remarks>The scale the instrument reported is averaged as it is; the other is computed chip by chip when the method states all it takes.</remarks>
internal sealed class ColourResults(SampleReadings readings, TrialSettings trial, ResultSheet sheet)
{
    private static readonly Quantity[] Hunter = [QuantityCatalogue.HunterL, QuantityCatalogue.HunterA, QuantityCatalogue.HunterB];
    private static readonly Quantity[] Cielab = [QuantityCatalogue.CielabL, QuantityCatalogue.CielabA, QuantityCatalogue.CielabB];

    private static readonly Quantity[] MeanHunter =
        [QuantityCatalogue.MeanHunterL, QuantityCatalogue.MeanHunterA, QuantityCatalogue.MeanHunterB];

    private static readonly Quantity[] MeanCielab =
        [QuantityCatalogue.MeanCielabL, QuantityCatalogue.MeanCielabA, QuantityCatalogue.MeanCielabB];

    public void Compute()
    {
        var colours = readings.All.Where(reading => reading.Quantity.Kind == QuantityKind.Colour).ToList();
        if (colours.Count == 0 || !AreOfOneMethod(colours))
        {
            return;
        }

        var chips = Chip.Of(colours);
        var hunter = AddMeans(chips, Hunter, MeanHunter);
        var cielab = AddMeans(chips, Cielab, MeanCielab);
        var darkness = chips.Where(chip => chip.Mean(QuantityCatalogue.HunterL) is not null)
            .Select(chip => (L: chip.Mean(QuantityCatalogue.HunterL)!.Value, Readings: (IEnumerable<long>)chip.FromReadings[QuantityCatalogue.HunterL.Id])).ToList();
        if (hunter != cielab)
        {
            var converted = Convert(chips, colours[0], hunter);
            darkness = hunter ? darkness : converted;
        }

        AddDarkChips(darkness);
    }

    private bool AreOfOneMethod(List<SampleReading> colours)
    {
        var methods = colours.Select(reading => DescriptionOf(readings.MethodOf(reading))).Distinct().Order(StringComparer.Ordinal).ToList();
        if (methods.Count == 1)
        {
            return true;
        }

        sheet.Unknown(
            QuantityCatalogue.MeanHunterL, "", $"is not computed: chips were measured by different methods ({string.Join(" and ", methods)}), expected one; their colours are not comparable",
            "Take out the file that was measured under the wrong condition, or measure the chips again.");
        return false;
    }

    private static string DescriptionOf(MethodFacts facts) => string.Join(
        "/", new[] { MethodFactNames.Illuminant, MethodFactNames.Observer, MethodFactNames.HunterForm }.Select(name => facts.Find(name) ?? "not stated"));

    /// <returns>Whether the instrument reported this scale.</returns>
    private bool AddMeans(IReadOnlyList<Chip> chips, Quantity[] coordinates, Quantity[] means)
    {
        for (var index = 0; index < coordinates.Length; index++)
        {
            var read = chips.Where(chip => chip.Mean(coordinates[index]) is not null).ToList();
            if (read.Count > 0)
            {
                var values = read.ConvertAll(chip => chip.Mean(coordinates[index])!.Value);
                sheet.Add(
                    means[index], values.Average(), values.Count, Spread.Of(values), Text($"mean of {values.Count} chips"),
                    read.SelectMany(chip => chip.FromReadings[coordinates[index].Id]));
            }
        }

        return chips.Any(chip => coordinates.Any(coordinate => chip.Mean(coordinate) is not null));
    }

    /// <summary>Adds the means on the scale that was not reported.</summary>
    /// <returns>Hunter L of each chip when that is the computed scale.</returns>
    private List<(decimal L, IEnumerable<long> Readings)> Convert(IReadOnlyList<Chip> chips, SampleReading sample, bool fromHunter)
    {
        var (source, means) = fromHunter ? (Hunter, MeanCielab) : (Cielab, MeanHunter);
        if (ColourMethod.Read(readings.MethodOf(sample), out var whyNot) is not { } method)
        {
            sheet.Unknown(
                means[0], "", $"is not computed from {source[0].Name}: {whyNot}",
                "State illuminant, observer and hunterForm in the profile and read the file again; they are never guessed.");
            return [];
        }

        var whole = chips.Where(chip => source.All(coordinate => chip.Mean(coordinate) is not null)).ToList();
        var colours = new List<(double L, double A, double B)>();
        foreach (var chip in whole)
        {
            var (l, a, b) = ((double)chip.Mean(source[0])!.Value, (double)chip.Mean(source[1])!.Value, (double)chip.Mean(source[2])!.Value);
            if (TryConvert(method, fromHunter, (l, a, b), means[0]) is not { } colour)
            {
                return [];
            }

            colours.Add(colour);
        }

        if (colours.Count == 0)
        {
            return [];
        }

        AddConverted(means, source, whole, colours);
        return [.. colours.Zip(whole, (colour, chip) => ((decimal)colour.L, source.SelectMany(coordinate => chip.FromReadings[coordinate.Id])))];
    }

    private (double L, double A, double B)? TryConvert(ColourMethod method, bool fromHunter, (double L, double A, double B) colour, Quantity result)
    {
        try
        {
            return fromHunter ? method.ToCielab(colour.L, colour.A, colour.B) : method.ToHunter(colour.L, colour.A, colour.B);
        }
        catch (ArgumentOutOfRangeException)
        {
            sheet.Unusable(
                result, "", Text($"cannot be computed from the colour {colour.L:0.##}, {colour.A:0.##}, {colour.B:0.##}, expected one a reflecting chip can have"),
                "Set the reading aside and measure the chip again; check port and tile.");
            return null;
        }
    }

    private void AddConverted(Quantity[] means, Quantity[] source, List<Chip> chips, List<(double L, double A, double B)> colours)
    {
        var sources = chips.SelectMany(chip => source.SelectMany(coordinate => chip.FromReadings[coordinate.Id])).ToList();
        var coordinates = new[] { colours.ConvertAll(c => (decimal)c.L), colours.ConvertAll(c => (decimal)c.A), colours.ConvertAll(c => (decimal)c.B) };
        for (var index = 0; index < means.Length; index++)
        {
            sheet.Add(
                means[index], coordinates[index].Average(), colours.Count, Spread.Of(coordinates[index]),
                Text($"mean of {colours.Count} chips, converted by X, Y, Z"), sources);
        }
    }

    private void AddDarkChips(List<(decimal L, IEnumerable<long> Readings)> chips)
    {
        if (chips.Count > 0)
        {
            var dark = chips.Count(chip => chip.L < trial.DarkBelowHunterL);
            sheet.Add(
                QuantityCatalogue.DarkChips, 100m * dark / chips.Count, chips.Count, null, Text($"{dark} of {chips.Count} chips"),
                chips.SelectMany(chip => chip.Readings));
        }
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
