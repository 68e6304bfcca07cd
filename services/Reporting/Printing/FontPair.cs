namespace LabPipeline.Reporting.Printing;

/// <summary>Files of a plain font and its bold face.</summary>
internal sealed record FontPair(string Regular, string Bold);
