namespace LabPipeline.Science.ControlCharts;

/// <summary>A reading or a control in the order an instrument run measured them.</summary>
public sealed record RunEntry
{
    private RunEntry(string id, bool? controlPassed)
    {
        ArgumentException.ThrowIfNullOrEmpty(id);
        Id = id;
        ControlPassed = controlPassed;
    }

    /// <summary>Identity of the reading or control.</summary>
    public string Id { get; }

    /// <summary>Whether the control passed; null for a reading.</summary>
    public bool? ControlPassed { get; }

    public static RunEntry Reading(string id) => new(id, null);

    public static RunEntry Control(string id, bool passed) => new(id, passed);
}
