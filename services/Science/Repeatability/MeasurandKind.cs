namespace LabPipeline.Science.Repeatability;

/// <summary>What kind of quantity a method measures; decides whether general precision models apply.</summary>
public enum MeasurandKind
{
    /// <summary>Mass fraction of a chemical substance.</summary>
    Concentration = 1,

    /// <summary>Physical property: colour, specific gravity, temperature.</summary>
    PhysicalProperty = 2,

    /// <summary>Quantity that the method itself defines: peel loss, defect score, cleaned surface.</summary>
    MethodDefined = 3,
}
