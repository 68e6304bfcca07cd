using LabPipeline.Science.Quantities;

namespace LabPipeline.Quality.Results;

/// <summary>Repeatabilities assumed until a laboratory keeps its own from 15 or more pairs of duplicates.</summary>
/// <remarks>
/// Half the Horwitz reproducibility, RSD_r = 1/2 x 2 C^-0.15 % with C the mass fraction (AOAC Guidelines, Appendix F 2012): 4.4 % at
/// 0.05 mg/g and 4.8 % at 0.03 mg/g for glucose; 3.6 % at 0.2 mg/g for sucrose, and 4 % for its proportional part because a difference of
/// two readings repeats less well than one (common practice, no source). Not for colour or specific gravity, where Horwitz does not apply.
/// </remarks>
public static class ProvisionalRepeatability
{
    /// <summary>s_r of glucose at low levels in mg/g: 4.77 % of 0.03 mg/g, the lowest content that decides anything.</summary>
    public const decimal GlucoseConstant = 0.0014m;

    /// <summary>RSD of glucose: half Horwitz at 0.05 mg/g.</summary>
    public const decimal GlucoseRelative = 0.044m;

    /// <summary>s_r of sucrose at low levels in mg/g: 3.6 % of 0.2 mg/g, the lowest plausible content.</summary>
    public const decimal SucroseConstant = 0.0072m;

    /// <summary>RSD of sucrose.</summary>
    public const decimal SucroseRelative = 0.04m;

    private const string Source = "half the Horwitz reproducibility, assumed until the laboratory keeps its own";

    private static readonly RepeatabilityModel Glucose = new(QuantityCatalogue.Glucose, GlucoseConstant, GlucoseRelative, true, Source);

    private static readonly RepeatabilityModel Sucrose = new(QuantityCatalogue.Sucrose, SucroseConstant, SucroseRelative, true, Source);

    /// <summary>The provisional repeatability, or null when none is stated.</summary>
    public static RepeatabilityModel? Find(Quantity quantity) =>
        quantity == QuantityCatalogue.Glucose ? Glucose : quantity == QuantityCatalogue.Sucrose ? Sucrose : null;
}
