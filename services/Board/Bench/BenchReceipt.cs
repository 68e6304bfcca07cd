namespace LabPipeline.Board.Bench;

/// <summary>What became of a bench sheet.</summary>
/// <param name="File">The file it is in the drop folder as; null when it was refused.</param>
/// <param name="Faults">Why it was refused; empty when it was taken.</param>
public sealed record BenchReceipt(string? File, IReadOnlyList<string> Faults)
{
    public static BenchReceipt Taken(string file) => new(file, []);

    public static BenchReceipt Refused(params IReadOnlyList<string> faults) => new(null, faults);
}
