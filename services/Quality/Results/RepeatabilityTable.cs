using LabPipeline.Science.Quantities;

namespace LabPipeline.Quality.Results;

/// <summary>The repeatability in use for each quantity: the laboratory's own where it keeps one, else the stated provisional one.</summary>
public sealed class RepeatabilityTable(IEnumerable<RepeatabilityModel> kept)
{
    private readonly Dictionary<int, RepeatabilityModel> _kept = kept.ToDictionary(model => model.Quantity.Id);

    /// <summary>Only the provisional values.</summary>
    public static RepeatabilityTable Provisional { get; } = new([]);

    /// <exception cref="KeyNotFoundException">Duplicates of this quantity are not compared.</exception>
    public RepeatabilityModel For(Quantity quantity) => _kept.GetValueOrDefault(quantity.Id)
        ?? ProvisionalRepeatability.Find(quantity)
        ?? throw new KeyNotFoundException($"No repeatability is kept for {quantity.Name} and there is no provisional one; keep one from duplicate pairs first.");
}
