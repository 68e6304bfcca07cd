namespace LabPipeline.Station.Tests.Demo;

/// <summary>The season with everything planted in it, judged once for all tests that look at it.</summary>
public sealed class TroubledSeason() : JudgedSeason(clean: false);
