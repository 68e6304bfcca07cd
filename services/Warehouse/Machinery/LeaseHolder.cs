using System.Diagnostics;
using System.Globalization;

namespace LabPipeline.Warehouse.Machinery;

/// <summary>Names the process that holds a lease, so that another on the same machine can tell whether it still lives.</summary>
/// <remarks>A killed process cannot give its leases back; without this its successor would wait until they expire.</remarks>
public static class LeaseHolder
{
    private const char Separator = '/';

    /// <summary>This process: machine, process number and start time, since numbers are used again.</summary>
    public static string ThisProcess { get; } = Describe(Process.GetCurrentProcess());

    /// <summary>Whether <paramref name="holder"/> was a process of this machine that has ended. Of other machines nothing is known.</summary>
    public static bool HasEnded(string holder)
    {
        var parts = holder.Split(Separator);
        if (parts.Length != 3 || parts[0] != Environment.MachineName || !int.TryParse(parts[1], CultureInfo.InvariantCulture, out var number))
        {
            return false;
        }

        try
        {
            using var process = Process.GetProcessById(number);
            return process.HasExited || Describe(process) != holder;
        }
        catch (ArgumentException)
        {
            // No process has this number.
            return true;
        }
    }

    private static string Describe(Process process) => string.Create(
        CultureInfo.InvariantCulture, $"{Environment.MachineName}{Separator}{process.Id}{Separator}{process.StartTime.ToUniversalTime():yyyyMMddTHHmmss}");
}
