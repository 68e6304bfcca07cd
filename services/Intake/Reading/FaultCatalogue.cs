namespace LabPipeline.Intake.Reading;

/// <summary>Every fault a file can have, with its code and words.</summary>
public static class FaultCatalogue
{
    internal static string Describe(Fault fault, string fileName) => fault.Code + fileName;
}
