namespace LabPipeline.Science.ControlCharts;

/// <summary>Judges the readings of a run by the controls that bracket them.</summary>
/// <remarks>
/// Controls measured one after the other, such as a low and a high one, count as one check and all must pass. Readings between a good and a
/// failed check are in doubt, since nobody knows when the instrument went off. Common practice of analytical laboratories (no source).
/// </remarks>
public static class Bracketing
{
    /// <summary>State of every reading, in run order.</summary>
    /// <param name="run">Readings and controls in the order they were measured.</param>
    public static IReadOnlyList<BracketedReading> Judge(IReadOnlyList<RunEntry> run)
    {
        ArgumentNullException.ThrowIfNull(run);
        var readings = new List<BracketedReading>();
        for (var index = 0; index < run.Count; index++)
        {
            if (run[index].ControlPassed is null)
            {
                var before = CheckFrom(run, index, -1);
                var after = CheckFrom(run, index, +1);
                readings.Add(new BracketedReading(run[index].Id, StateOf(before, after), before, after));
            }
        }

        return readings;
    }

    private static BracketState StateOf(List<RunEntry> before, List<RunEntry> after)
    {
        if (before.Concat(after).Any(control => control.ControlPassed == false))
        {
            return BracketState.InDoubt;
        }

        return before.Count > 0 && after.Count > 0 ? BracketState.Good : BracketState.Open;
    }

    private static List<RunEntry> CheckFrom(IReadOnlyList<RunEntry> run, int index, int direction)
    {
        var position = index + direction;
        while (position >= 0 && position < run.Count && run[position].ControlPassed is null)
        {
            position += direction;
        }

        var controls = new List<RunEntry>();
        while (position >= 0 && position < run.Count && run[position].ControlPassed is not null)
        {
            controls.Add(run[position]);
            position += direction;
        }

        return controls;
    }
}
