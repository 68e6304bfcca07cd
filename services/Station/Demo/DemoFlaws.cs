namespace LabPipeline.Station.Demo;

/// <summary>What was wrong with instruments and racks for a whole session; a clean season has nothing of it.</summary>
internal sealed record DemoFlaws
{
    public static readonly (int Pull, string Block) Drifting = (1, "1");
    public static readonly (int Pull, string Block) WornEnzyme = (2, "3");
    public static readonly (int Pull, string Block) OtherUnit = (4, "1");
    public static readonly (int Pull, string Block) DirtyPort = (6, "2");
    public static readonly (int Pull, string Block) SternScorer = (7, "3");
    public static readonly (int Pull, string Block) RackShifted = (2, "4");
    public static readonly (int Pull, string Block) TrayRotated = (7, "2");
    public static readonly (int Pull, string Block) Exchanged = (8, "4");

    public const int FirstExchanged = 2;
    public const int SecondExchanged = 7;

    public static DemoFlaws None { get; } = new();

    public SugarFlaw Sugar { get; private init; }

    /// <summary>Grams of a sling that nobody tared.</summary>
    public double Sling { get; private init; }

    /// <summary>Number of the fry batch that met cold oil; 0 when none did.</summary>
    public int ColdBatch { get; private init; }

    /// <summary>Hunter L by which the closing tile reads too high.</summary>
    public double TileShift { get; private init; }

    /// <summary>Points that the scorer gives too many.</summary>
    public int StemEndShift { get; private init; }

    /// <summary>The order in which the analyser got the samples.</summary>
    public Func<IReadOnlyList<DemoSample>, IReadOnlyList<DemoSample>> SugarOrder { get; private init; } = samples => samples;

    /// <summary>The order in which chips were read.</summary>
    public Func<IReadOnlyList<DemoSample>, IReadOnlyList<DemoSample>> ColourOrder { get; private init; } = samples => samples;

    public static DemoFlaws Of(BenchSession session)
    {
        var at = (session.Pull, session.Block);
        return new DemoFlaws
        {
            Sugar = at == Drifting ? SugarFlaw.Drift : at == WornEnzyme ? SugarFlaw.WornEnzyme : at == OtherUnit ? SugarFlaw.OtherUnit : SugarFlaw.None,
            Sling = at == DemoMishaps.UntaredSling ? DemoMishaps.SlingGrams : 0,
            ColdBatch = at == DemoMishaps.ColdOil ? DemoMishaps.ColdBatch : 0,
            TileShift = at == DirtyPort ? 0.9 : 0,
            StemEndShift = at == SternScorer ? 2 : 0,
            SugarOrder = at == Exchanged ? Exchange : samples => samples,
            ColourOrder = at == RackShifted ? Shift : at == TrayRotated ? Rotate : samples => samples,
        };
    }

    private static IReadOnlyList<DemoSample> Shift(IReadOnlyList<DemoSample> samples) => [samples[^1], .. samples.SkipLast(1)];

    private static IReadOnlyList<DemoSample> Rotate(IReadOnlyList<DemoSample> samples) => [.. samples.Reverse()];

    private static List<DemoSample> Exchange(IReadOnlyList<DemoSample> samples)
    {
        var list = samples.ToList();
        (list[FirstExchanged], list[SecondExchanged]) = (list[SecondExchanged], list[FirstExchanged]);
        return list;
    }
}
