using System.Globalization;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Schema;
using LabPipeline.Warehouse.Setup;
using Spectre.Console;
using Spectre.Console.Cli;

namespace LabPipeline.Station.Commands;

/// <summary>Makes or upgrades the warehouse's tables, for services whose login may not.</summary>
internal sealed class MigrateCommand(IAnsiConsole console) : AsyncCommand<StationSettings>
{
    public override async Task<int> ExecuteAsync(CommandContext context, StationSettings settings, CancellationToken cancellationToken)
    {
        using var warehouse = await StationWarehouse.CreateAsync(settings.Lab, cancellationToken);
        var dialect = warehouse.Dialect.Name;
        console.WriteLine(string.Create(
            CultureInfo.InvariantCulture, $"The warehouse ({dialect}) has schema {Migrator.ScriptsOf(dialect)[^1].Number}, the newest this program knows."));
        if (dialect == DialectName.SqlServer)
        {
            await SqlServerRoles.GrantAsync(warehouse, cancellationToken);
            console.WriteLine("The roles lab_writer and lab_analyst may do what this schema asks for.");
        }

        return ExitCode.Done;
    }
}
