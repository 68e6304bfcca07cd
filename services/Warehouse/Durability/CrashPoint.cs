using System.Diagnostics;
using System.Globalization;

namespace LabPipeline.Warehouse.Durability;

/// <summary>Stands between durable steps and does nothing, unless a test asked for the end of the process right there.</summary>
/// <remarks><c>LABPIPELINE_CRASH_AT=FileArchived:3</c> ends the process the third time it passes there, as <c>kill -9</c> does: no handler runs, nothing is flushed.</remarks>
public static class CrashPoint
{
    public const string Variable = "LABPIPELINE_CRASH_AT";

    private static readonly DurableStep? Where;
    private static int _passesLeft;

    static CrashPoint()
    {
        if (Environment.GetEnvironmentVariable(Variable)?.Split(':') is [var step, var count])
        {
            Where = Enum.Parse<DurableStep>(step);
            _passesLeft = int.Parse(count, CultureInfo.InvariantCulture);
        }
    }

    public static void Passed(DurableStep step)
    {
        if (step == Where && Interlocked.Decrement(ref _passesLeft) == 0)
        {
            Process.GetCurrentProcess().Kill();

            // The system may take a moment to end the process; this thread must not take another step meanwhile.
            Thread.Sleep(Timeout.Infinite);
        }
    }
}
