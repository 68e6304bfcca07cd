namespace LabPipeline.Station.Tests.Demo;

/// <summary>The season in which nothing goes wrong.</summary>
public sealed class CleanSeason() : JudgedSeason(clean: true);
