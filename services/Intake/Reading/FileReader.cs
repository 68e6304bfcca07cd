using LabPipeline.Intake.Profiles;
using LabPipeline.Intake.Text;

namespace LabPipeline.Intake.Reading;

/// <summary>Turns the bytes of a file into readings by its profile, in one pass and bounded memory.</summary>
public static class FileReader
{
    /// <summary>Reads <paramref name="bytes"/> to the end, or to the first place nothing can be read after.</summary>
    /// <remarks>Faults of the file are in the outcome; exceptions are failures of the stream or the sink, or a cancellation.</remarks>
    public static ReadOutcome Read(
        Profile profile, Stream bytes, string fileName, IReadingSink sink, ReadLimits limits, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(profile);
        ArgumentNullException.ThrowIfNull(bytes);
        ArgumentNullException.ThrowIfNull(sink);
        ArgumentNullException.ThrowIfNull(limits);
        using var decoder = new StrictDecoder(bytes, profile.Text.Encoding);
        using var window = new CharWindow(decoder, limits.MaxLineLength, cancellationToken);
        var faults = new FaultLog(limits.MaxFaults);
        var feed = new RowFeed(profile, window, limits, faults);
        var tally = new ReadTally(profile, limits, faults, sink);
        var names = ProfileColumns.ReadBy(profile);
        var rows = Rows(profile, feed, names, tally.IgnoredColumns);
        if (rows.Open())
        {
            var columns = ColumnBinding.Bind(profile, names, rows, faults, tally.IgnoredColumns);
            if (faults.Count == 0)
            {
                ReadRows(new RowReader(profile, rows, columns, tally.Missing), rows, tally);
            }

            if (faults.Count == 0 && tally.Rows == 0)
            {
                faults.Add(FaultCatalogue.HeaderOnly(feed.Line));
            }
        }

        return tally.Outcome(fileName, feed.Incomplete);
    }

    private static void ReadRows(RowReader reader, IRowSource rows, ReadTally tally)
    {
        while (rows.Next())
        {
            var fault = reader.Read();
            if (fault is null)
            {
                tally.Take(reader.Readings);
            }
            else
            {
                tally.Refuse(rows.Line, fault);
            }
        }
    }

    private static IRowSource Rows(Profile profile, RowFeed feed, IReadOnlyList<string> names, ISet<string> ignored) => profile.Text.Layout switch
    {
        TextLayout.Delimited => new DelimitedRows(feed, profile.Text),
        TextLayout.FixedWidth => new FixedWidthRows(feed, profile.Text),
        TextLayout.KeyValueBlocks => new KeyValueRows(feed, profile, [.. names.Union(profile.IgnoredColumns, StringComparer.Ordinal)], ignored),
        _ => new CgatsRows(feed, names.ToHashSet(StringComparer.Ordinal)),
    };
}
