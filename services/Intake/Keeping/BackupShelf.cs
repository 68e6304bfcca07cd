using System.Globalization;
using LabPipeline.Warehouse;

namespace LabPipeline.Intake.Keeping;

/// <summary>The folder with copies of the warehouse, newest last by name; a few are kept.</summary>
public sealed class BackupShelf(string folder)
{
    private const int Kept = 7;
    private const string Pattern = "warehouse-*.db";

    /// <returns>Path of the new copy; null where the database's own tools back it up.</returns>
    public async Task<string?> AddAsync(LabWarehouse warehouse, DateTimeOffset now, CancellationToken cancellationToken)
    {
        Directory.CreateDirectory(folder);
        var path = Path.Combine(folder, string.Create(CultureInfo.InvariantCulture, $"warehouse-{now.UtcDateTime:yyyyMMddTHHmmssfff}Z.db"));
        if (!await warehouse.Dialect.BackUpAsync(path, cancellationToken).ConfigureAwait(false))
        {
            return null;
        }

        foreach (var old in List().SkipLast(Kept))
        {
            File.Delete(old);
        }

        return path;
    }

    public string? Newest() => List().LastOrDefault();

    private IEnumerable<string> List() => Directory.Exists(folder) ? Directory.GetFiles(folder, Pattern).Order(StringComparer.Ordinal) : [];
}
