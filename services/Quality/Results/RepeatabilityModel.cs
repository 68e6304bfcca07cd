using LabPipeline.Science.Quantities;

namespace LabPipeline.Quality.Results;

/// <summary>Repeatability of a quantity over its levels: s_r = max(constant, relative x |level|), both in the quantity's unit.</summary>
/// <remarks>Constant where readings are near the quantitation limit, proportional above, the usual shape for chemical methods (common practice, no source).</remarks>
public sealed record RepeatabilityModel(Quantity Quantity, decimal Constant, decimal Relative, bool IsProvisional, string Source)
{
    public decimal SdAt(decimal level) => Math.Max(Constant, Relative * Math.Abs(level));
}
