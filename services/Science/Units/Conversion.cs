namespace LabPipeline.Science.Units;

/// <summary>Factors between customary and SI units of field and bench; multiply a value in the first unit to get the second.</summary>
/// <remarks>
/// Exact definitions (international yard and pound, 1959; NIST SP 811). Masses of 1 lb and 1 oz stand in <c>Quantities.UnitConversion</c>
/// with the readings they serve.
/// </remarks>
public static class Conversion
{
    /// <summary>1 inch in mm.</summary>
    public const decimal MillimetresPerInch = 25.4m;

    /// <summary>1 lb in kg.</summary>
    public const decimal KilogramsPerPound = 0.45359237m;

    /// <summary>1 US hundredweight (100 lb) in kg.</summary>
    public const decimal KilogramsPerHundredweight = 100m * KilogramsPerPound;

    /// <summary>1 UK hundredweight (112 lb) in kg.</summary>
    public const decimal KilogramsPerLongHundredweight = 112m * KilogramsPerPound;

    /// <summary>1 international acre in m².</summary>
    public const decimal SquareMetresPerAcre = 4046.8564224m;

    /// <summary>1 ha in acres.</summary>
    public const decimal AcresPerHectare = 10000m / SquareMetresPerAcre;

    /// <summary>1 lb/acre in kg/ha.</summary>
    public const decimal KilogramsPerHectarePerPoundPerAcre = KilogramsPerPound * AcresPerHectare;

    /// <summary>1 US cwt/acre in kg/ha.</summary>
    public const decimal KilogramsPerHectarePerHundredweightPerAcre = KilogramsPerHundredweight * AcresPerHectare;

    /// <summary>1 US liquid gallon (231 cubic inches) in L.</summary>
    public const decimal LitresPerGallon = 3.785411784m;
}
