using LabPipeline.Science.Quantities;

namespace LabPipeline.Quality.Results;

/// <summary>The method facts results depend on, as a profile states them and the file's ledger row keeps them: texts by name.</summary>
public static class MethodFactNames
{
    /// <summary>Illuminant of a colour method: A, C, D50, D65 or D75.</summary>
    public const string Illuminant = "illuminant";

    /// <summary>Observer of a colour method in degrees: 2 or 10.</summary>
    public const string Observer = "observer";

    /// <summary>Form of the Hunter scale: tabulated, square root, sum, or handbook C/2.</summary>
    public const string HunterForm = "hunterForm";

    /// <summary>Quantitation limit of a reading, a number in the quantity's canonical unit: <c>limitOfQuantitation.glucose_in_extract</c> = <c>0.005</c>.</summary>
    public static string LimitOf(Quantity quantity) => "limitOfQuantitation." + quantity.Name;
}
