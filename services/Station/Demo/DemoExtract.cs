namespace LabPipeline.Station.Demo;

/// <summary>One extract of a sample as the analyser is fed with it.</summary>
/// <remarks>
/// <c>Label</c>: what was scanned; the sample's barcode unless someone scanned another label.
/// <c>Glucose</c>, <c>TotalGlucose</c>: mg/g of fresh weight. <c>Dilution</c>: what was done. <c>DilutionWritten</c>: what was entered.
/// </remarks>
internal sealed record DemoExtract(
    string Label, int Number, double FreshMass, double Glucose, double TotalGlucose, int Dilution, int DilutionWritten)
{
    public const double MadeUpTo = 100;

    /// <summary>Whether the volume was entered once more as solvent added.</summary>
    public bool SolventWritten { get; init; }

    public double GlucoseRead => GramsPerLitre(Glucose);

    public double TotalGlucoseRead => GramsPerLitre(TotalGlucose);

    private double GramsPerLitre(double content) => content * FreshMass / MadeUpTo / Dilution;
}
