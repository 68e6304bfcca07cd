using LabPipeline.Intake.Profiles;

namespace LabPipeline.Intake.Reading;

/// <summary>Finds the profile's columns in a file by name, whatever their order, and says what does not fit.</summary>
internal static class ColumnBinding
{
    /// <summary>Column numbers by name; faults go to <paramref name="faults"/>, columns left unread to <paramref name="ignored"/>.</summary>
    public static IReadOnlyDictionary<string, int> Bind(
        Profile profile, IReadOnlyList<string> read, IRowSource rows, FaultLog faults, ISet<string> ignored)
    {
        var numbers = new Dictionary<string, int>(StringComparer.Ordinal);
        for (var column = 0; column < rows.Columns.Count; column++)
        {
            var name = rows.Columns[column];
            if (!numbers.TryAdd(name, column))
            {
                faults.Add(FaultCatalogue.DuplicateColumn(new CellPlace(rows.HeaderLine, column + 1, name)));
            }
        }

        foreach (var name in read.Where(name => !numbers.ContainsKey(name)))
        {
            faults.Add(FaultCatalogue.MissingColumn(rows.HeaderLine, name));
        }

        foreach (var name in numbers.Keys.Except(read, StringComparer.Ordinal))
        {
            if (profile.IgnoredColumns.Contains(name, StringComparer.Ordinal) || profile.UnknownColumns == UnknownColumns.Ignore)
            {
                ignored.Add(name);
            }
            else
            {
                faults.Add(FaultCatalogue.UnknownColumn(new CellPlace(rows.HeaderLine, numbers[name] + 1, name)));
            }
        }

        return numbers;
    }
}
