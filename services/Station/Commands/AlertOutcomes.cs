using LabPipeline.Warehouse.Alerts;

namespace LabPipeline.Station.Commands;

/// <summary>Turns what became of an action on an alert into a message.</summary>
internal static class AlertOutcomes
{
    public static void Require(AlertAction outcome, int number)
    {
        if (outcome == AlertAction.NotFound)
        {
            throw new StationException(ExitCode.NotFound, $"There is no alert {number}; 'station alerts --all' lists them.");
        }

        if (outcome == AlertAction.NotOpen)
        {
            throw new StationException(ExitCode.Faults, $"Alert {number} is not open any more; nothing was changed.");
        }
    }
}
