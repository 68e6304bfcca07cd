using LabPipeline.Hosting;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Dialects;
using LabPipeline.Warehouse.Schema;

namespace LabPipeline.Station;

/// <summary>Opens the warehouse of a data folder for a command that looks or corrects.</summary>
public static class StationWarehouse
{
    /// <exception cref="StationException">There is no warehouse yet.</exception>
    public static async Task<LabWarehouse> OpenAsync(LabOptions lab, CancellationToken cancellationToken)
    {
        if (!File.Exists(lab.WarehouseFile))
        {
            throw new StationException(
                ExitCode.NotFound, $"No warehouse at {lab.WarehouseFile}; run 'station demo' or 'station plan load' first, or name its folder with --data.");
        }

        return await CreateAsync(lab, cancellationToken).ConfigureAwait(false);
    }

    /// <summary>Opens the warehouse, making it when it is not there.</summary>
    public static async Task<LabWarehouse> CreateAsync(LabOptions lab, CancellationToken cancellationToken)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(lab.WarehouseFile)!);
        var warehouse = new LabWarehouse(new SqliteDialect(lab.WarehouseFile), TimeProvider.System);
        await new Migrator(warehouse, TimeProvider.System).MigrateAsync(cancellationToken).ConfigureAwait(false);
        return warehouse;
    }
}
