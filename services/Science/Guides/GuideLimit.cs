namespace LabPipeline.Science.Guides;

/// <summary>A value people compare results with: a guide to be edited per trial, not a rule of the program.</summary>
/// <param name="Name">Stored name; stable for ever.</param>
/// <param name="Value">The value.</param>
/// <param name="Unit">Its unit.</param>
/// <param name="Bound">Which side is wanted.</param>
/// <param name="Meaning">When it applies, in one sentence.</param>
/// <param name="Source">Where it comes from.</param>
/// <param name="Evidence">How well it is known.</param>
/// <param name="LiteratureRow">Row of the literature table that states it.</param>
public sealed record GuideLimit(
    string Name, decimal Value, string Unit, GuideBound Bound, string Meaning, string Source, Evidence Evidence, int LiteratureRow)
{
    /// <summary>Whether a result in the same unit is as wanted; null where the guide is only "about" a value.</summary>
    public bool? IsMet(decimal result) => Bound switch
    {
        GuideBound.Below => result < Value,
        GuideBound.AtMost => result <= Value,
        GuideBound.AtLeast => result >= Value,
        _ => null,
    };
}
