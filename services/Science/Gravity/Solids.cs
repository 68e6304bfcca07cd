namespace LabPipeline.Science.Gravity;

/// <summary>What a relation to specific gravity estimates.</summary>
public enum Solids
{
    DryMatter = 1,
    Starch = 2,
}
