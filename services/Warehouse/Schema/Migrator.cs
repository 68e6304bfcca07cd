using System.Data.Common;
using System.Reflection;
using System.Security.Cryptography;
using System.Text;
using Dapper;
using LabPipeline.Science.Quantities;

namespace LabPipeline.Warehouse.Schema;

/// <summary>Brings a warehouse to the newest schema: numbered scripts, forward only, each remembered with its checksum.</summary>
public sealed class Migrator(LabWarehouse warehouse, TimeProvider time)
{
    private static readonly SqlText CreateVersionTable = SqlText.Load<Migrator>("create-schema-version");
    private static readonly SqlText ListVersions = SqlText.Load<Migrator>("list-schema-versions");
    private static readonly SqlText InsertVersion = SqlText.Load<Migrator>("insert-schema-version");
    private static readonly SqlText UpdateQuantity = SqlText.Load<Migrator>("update-quantity");
    private static readonly SqlText InsertQuantity = SqlText.Load<Migrator>("insert-quantity");

    /// <summary>The scripts of one dialect, in order.</summary>
    public static IReadOnlyList<MigrationScript> ScriptsOf(DialectName dialect)
    {
        var assembly = Assembly.GetExecutingAssembly();
        var folder = $"Migrations/{dialect}/";
        return
        [
            .. assembly.GetManifestResourceNames()
                .Where(name => name.StartsWith(folder, StringComparison.Ordinal))
                .Order(StringComparer.Ordinal)
                .Select(name => Read(assembly, name, name[folder.Length..^".sql".Length])),
        ];
    }

    /// <summary>Applies what is missing, in one transaction, so that two processes starting together do it once.</summary>
    /// <exception cref="InvalidOperationException">
    /// The warehouse was made by a newer version, an applied script was changed since, or the login may not change tables.
    /// </exception>
    public Task MigrateAsync(CancellationToken cancellationToken) => warehouse.WriteAsync(
        async session =>
        {
            await warehouse.Dialect.LockForMigrationAsync(session, cancellationToken).ConfigureAwait(false);
            await session.ExecuteAsync(CreateVersionTable).ConfigureAwait(false);
            var applied = (await session.QueryAsync<AppliedVersion>(ListVersions).ConfigureAwait(false)).ToDictionary(row => row.Number);
            var scripts = ScriptsOf(session.Dialect);
            AssertKnown(applied, scripts);
            var missing = scripts.Where(script => !applied.ContainsKey(script.Number)).ToList();
            foreach (var script in missing)
            {
                await ApplyAsync(session, script).ConfigureAwait(false);
            }

            if (missing.Count > 0)
            {
                await warehouse.Dialect.DescribeAsync(session).ConfigureAwait(false);
            }

            await WriteQuantitiesAsync(session).ConfigureAwait(false);
        },
        cancellationToken);

    /// <summary>Whether the warehouse can be read and has exactly the scripts of this program.</summary>
    public Task<bool> IsNewestAsync(CancellationToken cancellationToken) => warehouse.ReadAsync(
        async session =>
        {
            var applied = (await session.QueryAsync<AppliedVersion>(ListVersions).ConfigureAwait(false)).ToDictionary(row => row.Number);
            var scripts = ScriptsOf(session.Dialect);
            return applied.Count == scripts.Count
                && scripts.All(script => applied.TryGetValue(script.Number, out var row) && row.Checksum == script.Checksum);
        },
        cancellationToken);

    private static void AssertKnown(Dictionary<int, AppliedVersion> applied, IReadOnlyList<MigrationScript> scripts)
    {
        foreach (var row in applied.Values)
        {
            var script = scripts.FirstOrDefault(candidate => candidate.Number == row.Number)
                ?? throw new InvalidOperationException(
                    $"This warehouse has schema {row.Number} ({row.Name}), newer than this program's {scripts[^1].Number}; run the newer program.");
            if (script.Checksum != row.Checksum)
            {
                throw new InvalidOperationException(
                    $"Schema script {row.Name} is not the one this warehouse was made with; applied scripts are never edited, add a new one.");
            }
        }
    }

    private static async Task WriteQuantitiesAsync(WarehouseSession session)
    {
        foreach (var quantity in QuantityCatalogue.All)
        {
            var row = new { id = quantity.Id, name = quantity.Name, unit = quantity.Unit.Symbol, description = quantity.Description };
            if (await session.ExecuteAsync(UpdateQuantity, row).ConfigureAwait(false) == 0)
            {
                await session.ExecuteAsync(InsertQuantity, row).ConfigureAwait(false);
            }
        }
    }

    private static MigrationScript Read(Assembly assembly, string resource, string name)
    {
        using var reader = new StreamReader(assembly.GetManifestResourceStream(resource)!);
        var text = reader.ReadToEnd().ReplaceLineEndings("\n");
        var checksum = Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)));
        return new MigrationScript(int.Parse(name.AsSpan(0, 4), System.Globalization.CultureInfo.InvariantCulture), name, text, checksum);
    }

    private async Task ApplyAsync(WarehouseSession session, MigrationScript script)
    {
        try
        {
            foreach (var batch in warehouse.Dialect.Batches(script.Text))
            {
                await session.Connection.ExecuteAsync(batch, transaction: session.Transaction).ConfigureAwait(false);
            }
        }
        catch (DbException exception) when (!warehouse.Dialect.IsTransient(exception))
        {
            throw new InvalidOperationException(
                $"Schema script {script.Name} could not be applied: {exception.Message} "
                + "If this login may not change tables, run 'station migrate' once with the login that owns the database.",
                exception);
        }

        await session.ExecuteAsync(
            InsertVersion,
            new { number = script.Number, name = script.Name, checksum = script.Checksum, at = time.GetUtcNow() }).ConfigureAwait(false);
    }

    private sealed class AppliedVersion
    {
        public int Number { get; init; }

        public string Name { get; init; } = "";

        public string Checksum { get; init; } = "";
    }
}
