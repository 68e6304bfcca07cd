using LabPipeline.Science.Quantities;
using LabPipeline.Warehouse.Thresholds;

namespace LabPipeline.Quality.Rules;

/// <summary>The limits of a trial at an instant: its own where it has set them, else those of the quantity.</summary>
public sealed class ThresholdsInForce(IReadOnlyDictionary<(int QuantityId, string Kind), decimal?> own)
{
    /// <summary>Nothing set: the quantity catalogue decides.</summary>
    public static ThresholdsInForce None { get; } = new(new Dictionary<(int, string), decimal?>());

    public decimal Low(Quantity quantity) => Find(quantity, ThresholdKinds.Low) ?? quantity.Lowest;

    public decimal High(Quantity quantity) => Find(quantity, ThresholdKinds.High) ?? quantity.Highest;

    /// <summary>Limits included.</summary>
    public bool IsPlausible(Quantity quantity, decimal value) => value >= Low(quantity) && value <= High(quantity);

    /// <summary>The trial's own threshold; null when it has none or went back to the default.</summary>
    public decimal? Find(Quantity quantity, string kind) => own.GetValueOrDefault((quantity.Id, kind));

    /// <summary>"1.05 to 1.11", with "of the trial" where it is the trial's own.</summary>
    internal string Range(Quantity quantity) => $"{NumberText.Of(Low(quantity))} to {NumberText.With(High(quantity), quantity.Unit)}"
        + (Find(quantity, ThresholdKinds.Low) is null && Find(quantity, ThresholdKinds.High) is null ? "" : " (set by the trial)");
}
