namespace LabPipeline.Reporting.Season.Keeping;

/// <summary>A limit that a mean must not cross.</summary>
/// <param name="Response">What is limited.</param>
/// <param name="Value">In its unit.</param>
/// <param name="HighIsBad">Whether values above it are out; otherwise those below.</param>
/// <param name="Source">Where the limit comes from, in words.</param>
internal sealed record KeepingLimit(Response Response, decimal Value, bool HighIsBad, string Source);
