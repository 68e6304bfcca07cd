namespace LabPipeline.Benchmarks;

/// <summary>A page people look at.</summary>
/// <param name="Name">What it is called in the table of times.</param>
/// <param name="Address">Its address, drawn anew for every visit.</param>
/// <param name="IsLive">Whether it has parts that show anew what changed.</param>
internal sealed record BoardPage(string Name, Func<Random, string> Address, bool IsLive = true);
