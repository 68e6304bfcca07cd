using LabPipeline.Hosting;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Schema;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.Hosting;

namespace LabPipeline.Station;

/// <summary>Opens the warehouse of a data folder for a command that looks or corrects.</summary>
public static class StationWarehouse
{
    /// <exception cref="StationException">There is no warehouse yet.</exception>
    public static async Task<LabWarehouse> OpenAsync(LabOptions lab, CancellationToken cancellationToken)
    {
        if (Options().UsesSqlite && !File.Exists(lab.WarehouseFile))
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
        var warehouse = new LabWarehouse(WarehouseDialects.Create(lab, Options()), TimeProvider.System);
        await new Migrator(warehouse, TimeProvider.System).MigrateAsync(cancellationToken).ConfigureAwait(false);
        return warehouse;
    }

    /// <summary>The same settings as the services': appsettings in the working folder, then the environment.</summary>
    private static WarehouseOptions Options()
    {
        var configuration = Host.CreateApplicationBuilder().Configuration;
        var options = configuration.GetSection(LabOptions.Section).Get<WarehouseOptions>() ?? new WarehouseOptions();
        var validity = new WarehouseOptionsValidator().Validate(null, options);
        return validity.Failed ? throw new StationException(ExitCode.Failed, validity.FailureMessage) : options;
    }
}
