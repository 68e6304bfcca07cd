namespace LabPipeline.Station.Demo;

/// <summary>One block at one pull on its bench day: the unit that instruments write a file for.</summary>
internal sealed record BenchSession(int Pull, string Block, DateOnly Day, IReadOnlyList<DemoSample> Samples)
{
    private static readonly string[] Crew = ["MB", "TS", "JR"];

    /// <summary>Initials of who does <paramref name="station"/> that day.</summary>
    public string Operator(int station) => Crew[(Pull + Samples.Min(sample => sample.Planned.RunningNumber) + station) % Crew.Length];

    public DateTime At(int hour, int minute) => Day.ToDateTime(new TimeOnly(hour, minute));
}
