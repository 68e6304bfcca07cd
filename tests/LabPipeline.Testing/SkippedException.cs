namespace LabPipeline.Testing;

/// <summary>Skips the running test. xunit knows such an exception by how its message begins, so that code beside the tests need not reference it.</summary>
public sealed class SkippedException(string reason) : Exception("$XunitDynamicSkip$" + reason);
