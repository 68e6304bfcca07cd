using LabPipeline.Quality.Rules;
using LabPipeline.Warehouse.Alerts;

namespace LabPipeline.Quality.Evaluation;

/// <summary>One decision of the reconciliation.</summary>
/// <param name="Kind">What is to be done.</param>
/// <param name="Existing">The alert as it stands; null when it opens.</param>
/// <param name="Finding">What the rules say now; null when it clears.</param>
public sealed record AlertChange(AlertChangeKind Kind, Alert? Existing, Finding? Finding);
