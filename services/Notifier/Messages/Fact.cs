namespace LabPipeline.Notifier.Messages;

/// <summary>One named number or word that an alert rests on.</summary>
public sealed record Fact(string Name, string Value);
