using LabPipeline.Science.Barcodes;
using LabPipeline.Warehouse.Plan;

namespace LabPipeline.Station.Demo;

/// <summary>The slips of the bench: which sample or session of which pull, and what becomes of it.</summary>
/// <remarks>Places count samples of a session from 0. The list people read is <see cref="DemoTroubles"/>.</remarks>
internal static class DemoMishaps
{
    /// <summary>A block whose bags nobody fetched.</summary>
    public static readonly (int Pull, string Block) Forgotten = (4, "2");

    /// <summary>A block brought to the bench after the window had closed.</summary>
    public static readonly (int Pull, string Block) Late = (6, "4");

    public static readonly (int Pull, string Block) UntaredSling = (5, "4");

    public static readonly (int Pull, string Block) ColdOil = (4, "3");

    public const double SlingGrams = 12;

    public const int ColdBatch = 2;

    /// <summary>Days by which the late block came after its bench day.</summary>
    public const int DaysLate = 4;

    public static readonly (int Pull, string Block, int Place) GlucoseHigh = (2, "1", 3);

    public static readonly (int Pull, string Block, int Place) GlucoseLow = (5, "3", 8);

    public static readonly (int Pull, string Block, int Place) SucroseHigh = (7, "2", 1);

    public static readonly (int Pull, string Block, int Place) Swapped = (1, "2", 6);

    public static readonly (int Pull, string Block, int Place) OtherLabel = (3, "4", 7);

    public static readonly (int Pull, string Block, int Place) ShortOfTubers = (6, "3", 4);

    public static readonly (int Pull, string Block, int Place) OpenPort = (7, "4", 2);

    public static readonly (int Pull, string Block, int Place) BadlyPeeled = (2, "4", 5);

    public static readonly (int Pull, string Block, int Place) TwoVolumes = (8, "1", 4);

    /// <summary>The sample of this place was weighed before peeling under its label of the next pull.</summary>
    public static readonly (int Pull, string Block, int Place) NextPull = (1, "4", 3);

    /// <summary>The first sample of this session that was diluted.</summary>
    public static readonly (int Pull, string Block) DilutionSlip = (8, "3");

    /// <summary>A label of another trial, with a good check character.</summary>
    public static string StrangeLabel { get; } = SampleBarcode.FromPayload("24KM04017").Text;

    /// <summary>The samples of a session as the bench handled them.</summary>
    public static IReadOnlyList<DemoSample> Apply(TrialPull pull, string block, IReadOnlyList<DemoSample> samples)
    {
        var slipped = (pull.Number, block) == DilutionSlip ? samples.First(sample => sample.Extracts[0].Dilution > 1) : null;
        return [.. samples.Select((sample, place) => ReferenceEquals(sample, slipped) ? Undiluted(sample) : Handle(sample, (pull.Number, block, place)))];
    }

    private static DemoSample Handle(DemoSample sample, (int Pull, string Block, int Place) at)
    {
        if (at == GlucoseHigh)
        {
            return WithExtract(sample, 1, extract => extract with { Glucose = extract.Glucose * 1.35, TotalGlucose = extract.TotalGlucose + (0.35 * extract.Glucose) });
        }

        if (at == GlucoseLow)
        {
            return WithExtract(sample, 0, extract => extract with { Glucose = extract.Glucose * 0.7, TotalGlucose = extract.TotalGlucose - (0.3 * extract.Glucose) });
        }

        if (at == SucroseHigh)
        {
            return WithExtract(sample, 1, extract => extract with { TotalGlucose = extract.Glucose + ((extract.TotalGlucose - extract.Glucose) * 1.3) });
        }

        if (at == Swapped)
        {
            return WithExtract(WithExtract(sample, 0, Swap), 1, Swap);
        }

        if (at == OtherLabel)
        {
            return WithExtract(sample, 1, extract => extract with { Label = StrangeLabel });
        }

        if (at == TwoVolumes)
        {
            return WithExtract(sample, 0, extract => extract with { SolventWritten = true });
        }

        return HandleChips(sample, at);
    }

    private static DemoSample HandleChips(DemoSample sample, (int Pull, string Block, int Place) at)
    {
        if (at == ShortOfTubers)
        {
            return sample with { Chips = [.. sample.Chips.Where(chip => chip.Tuber <= 3)] };
        }

        if (at == OpenPort)
        {
            return sample with { Chips = [sample.Chips[0] with { L = 8.2, A = 0.4, B = 2.1 }, .. sample.Chips.Skip(1)] };
        }

        return at == BadlyPeeled ? sample with { CleanedSurface = 75 } : sample;
    }

    private static DemoSample Undiluted(DemoSample sample) => WithExtract(sample, 1, extract => extract with { DilutionWritten = 1 });

    private static DemoExtract Swap(DemoExtract extract) => extract with { Glucose = extract.TotalGlucose, TotalGlucose = extract.Glucose };

    private static DemoSample WithExtract(DemoSample sample, int index, Func<DemoExtract, DemoExtract> change) =>
        sample with { Extracts = [.. sample.Extracts.Select((extract, number) => number == index ? change(extract) : extract)] };
}
