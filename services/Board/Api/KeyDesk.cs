using System.Security.Cryptography;
using System.Text;
using LabPipeline.Board.People;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Machinery;

namespace LabPipeline.Board.Api;

/// <summary>Makes, knows and ends the keys of programs.</summary>
public sealed class KeyDesk(LabWarehouse warehouse, TimeProvider time)
{
    /// <summary>Stands before every key, so that one left in a script is recognised.</summary>
    public const string Prefix = "labkey-";

    private const int RandomBytes = 32;

    private static readonly SqlText Find = SqlText.Load<KeyDesk>("find-key");
    private static readonly SqlText List = SqlText.Load<KeyDesk>("list-keys");
    private static readonly SqlText Insert = SqlText.Load<KeyDesk>("insert-key");
    private static readonly SqlText End = SqlText.Load<KeyDesk>("end-key");

    public Task<IReadOnlyList<ApiKey>> ListAsync(CancellationToken cancellationToken) =>
        warehouse.ReadAsync(session => session.QueryAsync<ApiKey>(List), cancellationToken);

    /// <returns>Null when no key in force has this text.</returns>
    public Task<ApiKey?> FindAsync(string key, CancellationToken cancellationToken) =>
        warehouse.ReadAsync(session => session.FirstOrDefaultAsync<ApiKey>(Find, new { hash = HashOf(key) }), cancellationToken);

    /// <returns>The key, for the only time; null when the name is taken or no name.</returns>
    public Task<string?> MakeAsync(string name, string by, CancellationToken cancellationToken)
    {
        if (PersonRules.NameFault(name) is not null)
        {
            return Task.FromResult<string?>(null);
        }

        var key = Prefix + Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(RandomBytes));
        var normal = PersonRules.Normal(name);
        return warehouse.WriteAsync(
            async session =>
            {
                var now = time.GetUtcNow();
                if (await session.ExecuteAsync(Insert, new { name = normal, hash = HashOf(key), madeAt = now, madeBy = by }).ConfigureAwait(false) == 0)
                {
                    return null;
                }

                await LogAsync(session, by, "key made", normal, now).ConfigureAwait(false);
                return key;
            },
            cancellationToken);
    }

    /// <returns>Whether a key of this name was in force.</returns>
    public Task<bool> EndAsync(string name, string by, CancellationToken cancellationToken) => warehouse.WriteAsync(
        async session =>
        {
            var now = time.GetUtcNow();
            var ended = await session.ExecuteAsync(End, new { name, endedAt = now }).ConfigureAwait(false) > 0;
            if (ended)
            {
                await LogAsync(session, by, "key ended", name, now).ConfigureAwait(false);
            }

            return ended;
        },
        cancellationToken);

    // A key has 256 random bits: nobody guesses one, so a plain hash keeps it from whoever reads the warehouse.
    private static string HashOf(string key) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(key)));

    private static Task LogAsync(WarehouseSession session, string by, string what, string name, DateTimeOffset now) =>
        ChangeLogStore.AddAsync(session, new Change { At = now, Who = by, What = what, Subject = "key:" + name, Why = "administration" });
}
