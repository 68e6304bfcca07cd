using LabPipeline.Reporting.Season.Data;

namespace LabPipeline.Reporting.Report;

/// <summary>The samples of one treatment combination at one pull.</summary>
internal sealed record EvidenceGroup(string Id, int PullNo, string Cell, IReadOnlyList<SampleFact> Samples);
