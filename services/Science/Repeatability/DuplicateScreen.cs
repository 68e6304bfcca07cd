using LabPipeline.Science.Units;

namespace LabPipeline.Science.Repeatability;

/// <summary>The quick screen of duplicates by relative percent difference, with a rule of its own near zero.</summary>
/// <remarks>
/// Where both results are at least 5 x the quantitation limit: RPD at most the limit (20 % is customary). Otherwise |d| at most the quantitation
/// limit. Equality agrees. Customary in laboratory guidance (from memory); the acceptability check of ISO 5725-6 is the stronger test once s_r is known.
/// </remarks>
public sealed class DuplicateScreen
{
    private const decimal NearZeroMultiple = 5m;

    private readonly decimal _limitPercent;
    private readonly decimal _quantitationLimit;

    /// <param name="limitPercent">Largest RPD that agrees, in %, above zero.</param>
    /// <param name="quantitationLimit">Quantitation limit in the unit of the results, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">A limit of zero or less.</exception>
    public DuplicateScreen(decimal limitPercent, decimal quantitationLimit)
    {
        _limitPercent = Require.Positive(limitPercent, nameof(limitPercent));
        _quantitationLimit = Require.Positive(quantitationLimit, nameof(quantitationLimit));
    }

    /// <summary>Compares a pair with the limit that applies to it.</summary>
    public DuplicateVerdict Compare(DuplicatePair pair) =>
        Math.Min(pair.First, pair.Second) < NearZeroMultiple * _quantitationLimit
            ? new DuplicateVerdict(DuplicateRule.AbsoluteDifference, pair.AbsoluteDifference, _quantitationLimit)
            : new DuplicateVerdict(DuplicateRule.RelativePercentDifference, pair.RelativePercentDifference.Value, _limitPercent);
}
