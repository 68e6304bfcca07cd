using LabPipeline.Science.Units;

namespace LabPipeline.Science.Repeatability;

/// <summary>Provisional precision from concentration alone, until a laboratory has 15 to 20 duplicates of its own. Say so wherever it is used.</summary>
/// <remarks>
/// Predicted reproducibility PRSD_R = 2 C^-0.15 %, C a mass fraction; repeatability RSD_r is 1/2 to 2/3 of it; HorRat(r) = RSD_r found / PRSD_R, 0.3 to 1.3
/// is usual. Not meant for physical properties nor method-defined quantities. Source: AOAC Guidelines, Appendix F (2012).
/// </remarks>
public static class Horwitz
{
    /// <summary>Below 120 µg/kg the relation is known to fail.</summary>
    public const double LowestMassFraction = 1.2e-7;

    /// <summary>Lowest usual HorRat(r).</summary>
    public const double LowestHorRat = 0.3;

    /// <summary>Highest usual HorRat(r).</summary>
    public const double HighestHorRat = 1.3;

    /// <summary>Predicted relative reproducibility standard deviation in %.</summary>
    /// <param name="massFraction">C, 1.2e-7 to 1: 1 mg/g is 0.001.</param>
    /// <param name="kind">What is measured.</param>
    /// <returns>Not estimable for physical properties and method-defined quantities.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The mass fraction is out of range.</exception>
    public static Estimable<double> ReproducibilityPercent(double massFraction, MeasurandKind kind) => kind == MeasurandKind.Concentration
        ? 2 * Math.Pow(Require.Between(massFraction, LowestMassFraction, 1, nameof(massFraction)), -0.15)
        : Estimable<double>.Not($"the Horwitz relation does not apply to a {(kind == MeasurandKind.PhysicalProperty ? "physical property" : "method-defined quantity")}");

    /// <summary>Provisional relative repeatability standard deviation in %: half the predicted reproducibility, the stricter end of the usual range.</summary>
    /// <inheritdoc cref="ReproducibilityPercent" path="/param|/returns|/exception"/>
    public static Estimable<double> RepeatabilityPercent(double massFraction, MeasurandKind kind) => Scale(massFraction, kind, 0.5);

    /// <summary>The lenient end: two thirds of the predicted reproducibility, in %.</summary>
    /// <inheritdoc cref="ReproducibilityPercent" path="/param|/returns|/exception"/>
    public static Estimable<double> LenientRepeatabilityPercent(double massFraction, MeasurandKind kind) => Scale(massFraction, kind, 2.0 / 3);

    /// <summary>Provisional limit of the relative percent difference of duplicates: 2.8 x <see cref="RepeatabilityPercent"/>.</summary>
    /// <inheritdoc cref="ReproducibilityPercent" path="/param|/returns|/exception"/>
    public static Estimable<double> DuplicateLimitPercent(double massFraction, MeasurandKind kind) =>
        Scale(massFraction, kind, 0.5 * (double)RepeatabilityEstimate.LimitFactor);

    /// <summary>HorRat(r): relative standard deviation found / predicted.</summary>
    /// <param name="foundPercent">RSD_r found in %, zero or more.</param>
    /// <param name="massFraction">C, 1.2e-7 to 1.</param>
    /// <param name="kind">What is measured.</param>
    /// <returns>Not estimable for physical properties and method-defined quantities.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public static Estimable<double> HorRat(double foundPercent, double massFraction, MeasurandKind kind)
    {
        var found = Require.NotNegative(foundPercent, nameof(foundPercent));
        var predicted = ReproducibilityPercent(massFraction, kind);
        return predicted.IsEstimated ? found / predicted.Value : predicted;
    }

    private static Estimable<double> Scale(double massFraction, MeasurandKind kind, double factor)
    {
        var predicted = ReproducibilityPercent(massFraction, kind);
        return predicted.IsEstimated ? factor * predicted.Value : predicted;
    }
}
