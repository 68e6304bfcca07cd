using LabPipeline.Science.Units;

namespace LabPipeline.Science.Colour;

/// <summary>Share of dark chips in a sample.</summary>
public static class DarkChips
{
    /// <summary>100 x dark chips / chips, in %.</summary>
    /// <param name="lightness">Lightness of each chip, one value a chip, all on one scale (Hunter L or L*).</param>
    /// <param name="limit">Limit on the same scale.</param>
    /// <param name="rule">Whether the limit itself is dark.</param>
    /// <returns>Not estimable without chips.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A lightness outside 0 to 100, or an unknown rule.</exception>
    public static Estimable<decimal> Percent(IReadOnlyCollection<decimal> lightness, decimal limit, DarkLimit rule)
    {
        ArgumentNullException.ThrowIfNull(lightness);
        if (!Enum.IsDefined(rule))
        {
            throw new ArgumentOutOfRangeException(nameof(rule), $"Found {rule}, expected dark below, or at or below, the limit.");
        }

        if (lightness.Count == 0)
        {
            return Estimable<decimal>.Not("there are no chips");
        }

        var dark = lightness.Count(value => Require.Between(value, 0m, 100m, "a lightness") < limit || (rule == DarkLimit.AtOrBelow && value == limit));
        return 100m * dark / lightness.Count;
    }
}
