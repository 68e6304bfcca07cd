using LabPipeline.Science.Units;

namespace LabPipeline.Science.Sugars;

/// <summary>Dilution factor DF = (sample + diluent) / sample, 1 for undiluted.</summary>
public readonly record struct DilutionFactor
{
    private readonly decimal _excess;

    private DilutionFactor(decimal value) => _excess = value - 1m;

    /// <summary>The factor, 1 or more. <c>default</c> is undiluted.</summary>
    public decimal Value => _excess + 1m;

    /// <summary>No dilution, DF 1.</summary>
    public static DilutionFactor None => default;

    /// <summary>A factor as stated by the method.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Less than 1: dividing the wrong way round.</exception>
    public static DilutionFactor Of(decimal factor) => factor >= 1m
        ? new(factor)
        : throw Require.Out(factor, "a dilution factor", "1 or more: (sample + diluent) / sample");

    /// <summary>"One plus <paramref name="diluentParts"/>": 1 + 4 is DF 5, not 4.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative parts.</exception>
    public static DilutionFactor OnePlus(decimal diluentParts) => new(1m + Require.NotNegative(diluentParts, nameof(diluentParts)));

    /// <summary>From the volumes pipetted.</summary>
    /// <exception cref="ArgumentOutOfRangeException">No sample, or negative diluent.</exception>
    public static DilutionFactor FromVolumes(decimal sampleMillilitres, decimal diluentMillilitres)
    {
        var sample = Require.Positive(sampleMillilitres, nameof(sampleMillilitres));
        return new((sample + Require.NotNegative(diluentMillilitres, nameof(diluentMillilitres))) / sample);
    }
}
