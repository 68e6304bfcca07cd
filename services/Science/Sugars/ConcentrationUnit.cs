namespace LabPipeline.Science.Sugars;

/// <summary>Units an analyser reports a concentration in.</summary>
public enum ConcentrationUnit
{
    GramPerLitre = 1,
    MilligramPerDecilitre = 2,
    MillimolePerLitre = 3,
}
