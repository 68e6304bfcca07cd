namespace LabPipeline.Hosting.Bus;

/// <summary>A kind of bus.</summary>
public interface IBusTransport
{
    /// <summary>Whether it ends at this process and forgets at exit, or is shared with other processes and keeps what it took.</summary>
    bool EndsHere { get; }

    /// <summary>How many messages may be on their way to it at once.</summary>
    int InFlight { get; }

    /// <summary>A new, unstarted line over this transport.</summary>
    IBusLine Open();
}
