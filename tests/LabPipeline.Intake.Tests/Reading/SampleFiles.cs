using System.Text;
using LabPipeline.Intake.Profiles;
using LabPipeline.Intake.Reading;

namespace LabPipeline.Intake.Tests.Reading;

/// <summary>Files for <see cref="SampleProfiles"/>, and the shortest way to read one. Barcodes are those of H_iso7064_examples.csv.</summary>
internal static class SampleFiles
{
    public const string SugarHeader = "Sample,Extract,Replicate,Run,Operator,Time,Glucose";

    public const string Sugar = SugarHeader + "\n"
        + "S26P01T03R2C,1,1,RUN-7,AB,2026-01-14 08:30:00,0.052\n"
        + "S26P01T03R2C,1,2,RUN-7,AB,2026-01-14 08:31:00,0.0535\n"
        + "QC-LOW,,,RUN-7,AB,2026-01-14 08:32:00,0.101\n"
        + "S26P01T03R3A,1,1,RUN-7,\"A \"\"B\"\", jr\",2026-01-14 08:33:00,<0.005\n"
        + "S26P01T03R3A,1,2,RUN-7,AB,2026-01-14 08:34:00,ND\n";

    public const string Balance = "Sample = S26P01T03R2C\nRun = 7\nAir = 3571.2 g\nWater = 284.5 g\n---\n"
        + "Sample = S26P01T03R3A\nRun = 7\nAir = 7.5 lb\nWater = 0.2845 kg\n---\n";

    public const string Colour = "CGATS.17\nORIGINATOR \"bench\"\nSERIAL \"COL 1\"\nCREATED \"2026-01-14\"\n# check tile done\n"
        + "NUMBER_OF_FIELDS 8\nBEGIN_DATA_FORMAT\nSAMPLE_ID SAMPLE_NAME XYZ_X XYZ_Y XYZ_Z\nLAB_L LAB_A LAB_B\nEND_DATA_FORMAT\n"
        + "NUMBER_OF_SETS 2\nBEGIN_DATA\n1 S26P01T03R2C 30.1 31.2 20.3 62.70 3.10 28.40\n2\tS26P01T03R2C\t29.9\t30.8\t20.0\t\"62.30\"\t3.3\t28.0\nEND_DATA\n";

    public const string FixedWidth = "Peel weights\nS26P01T03R2C  17   4,530\nS26P01T03R3A  17   4,120\nRecords: 2\n";

    public const string OneValue = "S26P01T03R2C;9;GLU;9,2;mg/dL\nS26P01T03R2C;9;SUC;1,5;mmol/L\nS26P01T03R2C;9;TEMP;21,0;degC\nS26P01T03R2C;9;MASS;50,02;-\n";

    public static (ReadOutcome Outcome, IReadOnlyList<ParsedReading> Readings) Read(Profile profile, string text, ReadLimits? limits = null) =>
        Read(profile, Bytes(profile, text), limits);

    public static (ReadOutcome Outcome, IReadOnlyList<ParsedReading> Readings) Read(Profile profile, byte[] bytes, ReadLimits? limits = null)
    {
        using var stream = new MemoryStream(bytes);
        var sink = new CollectingSink();
        var outcome = FileReader.Read(profile, stream, "f.csv", sink, limits ?? ReadLimits.Default, TestContext.Current.CancellationToken);
        return (outcome, sink.Readings);
    }

    /// <summary>The sentences of the faults, under the name f.csv.</summary>
    public static string[] Faults(Profile profile, string text, ReadLimits? limits = null) =>
        [.. Read(profile, text, limits).Outcome.Faults.Select(fault => fault.Describe("f.csv"))];

    public static byte[] Bytes(Profile profile, string text) =>
        (profile.Text.Encoding == Intake.Text.TextEncoding.Utf8 ? Encoding.UTF8 : Encoding.Latin1).GetBytes(text);
}
