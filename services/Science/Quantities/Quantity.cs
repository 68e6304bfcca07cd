namespace LabPipeline.Science.Quantities;

/// <summary>Something the laboratory measures: its name, the one unit it is kept in, and the range outside which a value is implausible.</summary>
/// <remarks>
/// Names are snake_case because they are also the names analysts meet in the warehouse. Identifiers are stored and never reused.
/// The range is a warning range for readings (inclusive), taken from the laboratory brief's usual practice unless a rule says otherwise.
/// </remarks>
/// <param name="Id">Stored identifier; stable for ever.</param>
/// <param name="Name">Warehouse name, such as <c>glucose_in_extract</c>.</param>
/// <param name="Unit">Canonical unit of every stored value.</param>
/// <param name="Kind">The kind of instrument that reports it.</param>
/// <param name="Lowest">Lowest plausible value, inclusive.</param>
/// <param name="Highest">Highest plausible value, inclusive.</param>
/// <param name="Description">One line for the data dictionary.</param>
public sealed record Quantity(int Id, string Name, Unit Unit, QuantityKind Kind, decimal Lowest, decimal Highest, string Description)
{
    /// <summary>Whether <paramref name="value"/>, in <see cref="Unit"/>, lies in the plausible range (limits included).</summary>
    public bool IsPlausible(decimal value) => value >= Lowest && value <= Highest;
}
