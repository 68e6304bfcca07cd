using Dapper;
using LabPipeline.Warehouse.Dialects;

namespace LabPipeline.Warehouse.Setup;

/// <summary>The roles of a warehouse in SQL Server, from the script its administrator may also run by hand.</summary>
public static class SqlServerRoles
{
    private static readonly string Script = Path.Combine(AppContext.BaseDirectory, "Setup", "SqlServer", "2-roles.sql");

    /// <summary>Makes the roles and gives them what the newest schema asks for; the login must be the database's owner.</summary>
    public static Task GrantAsync(LabWarehouse warehouse, CancellationToken cancellationToken) => warehouse.WriteAsync(
        async session =>
        {
            foreach (var batch in SqlServerBatches.Of(await File.ReadAllTextAsync(Script, cancellationToken).ConfigureAwait(false)))
            {
                await session.Connection.ExecuteAsync(batch, transaction: session.Transaction).ConfigureAwait(false);
            }
        },
        cancellationToken);
}
