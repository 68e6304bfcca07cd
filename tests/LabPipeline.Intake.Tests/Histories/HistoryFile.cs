using LabPipeline.Intake.Tests.Storing;

namespace LabPipeline.Intake.Tests.Histories;

/// <summary>The files of a history, all of one sample and one run.</summary>
internal static class HistoryFile
{
    /// <summary>The same keys with the same and other values, a bad value, a header alone, and something else altogether.</summary>
    public static readonly IReadOnlyList<string> Contents =
    [
        Rows("1=0.1", "2=0.2"), Rows("1=0.1", "2=0.2", "3=0.3"), Rows("2=0.3"), Rows("3=0.3", "1=0.1"), Rows("4=0.1", "2=0.2"), Rows("1=0.2", "4=0.1"),
        Rows("5=n/a"), SugarProfile.Header, "something else\n",
    ];

    public static string Row(string key, string value) => $"S26P01T03R2C,R1,{key},A,{value}\n";

    private static string Rows(params string[] rows) => SugarProfile.Header + string.Concat(rows.Select(row => Row(row.Split('=')[0], row.Split('=')[1])));
}
