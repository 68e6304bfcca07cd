namespace LabPipeline.Science.Sugars;

/// <summary>The free sugars of a potato tuber.</summary>
public enum Sugar
{
    Glucose = 1,
    Fructose = 2,
    Sucrose = 3,
}
