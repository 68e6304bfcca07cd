namespace LabPipeline.Science.Quantities;

/// <summary>Which kind of instrument file a quantity comes from, or that it is computed.</summary>
public enum QuantityKind
{
    Sugar = 1,
    Balance = 2,
    Colour = 3,
    Bench = 4,
    Result = 5,
}
