using System.Collections.Concurrent;
using System.Reflection;

namespace LabPipeline.Warehouse;

/// <summary>One SQL statement, kept in its own embedded file so that it can be read, run and checked outside the program.</summary>
/// <remarks>
/// <c>insert-result.sql</c> serves both dialects; where they differ, <c>insert-result.sqlite.sql</c> and
/// <c>insert-result.sqlserver.sql</c> stand beside each other. A missing file fails when the store's type is first touched.
/// </remarks>
public sealed class SqlText
{
    private static readonly ConcurrentDictionary<Assembly, IReadOnlyDictionary<string, string>> Files = new();

    private readonly string _sqlite;
    private readonly string _sqlServer;

    private SqlText(string name, string sqlite, string sqlServer)
    {
        Name = name;
        _sqlite = sqlite;
        _sqlServer = sqlServer;
    }

    public string Name { get; }

    /// <summary>The statement called <paramref name="name"/> in the assembly of <typeparamref name="TStore"/>.</summary>
    public static SqlText Load<TStore>(string name) => Load(typeof(TStore).Assembly, name);

    /// <summary>The statement called <paramref name="name"/> in <paramref name="assembly"/>.</summary>
    public static SqlText Load(Assembly assembly, string name)
    {
        var files = FilesOf(assembly);
        if (files.TryGetValue(name + ".sql", out var common))
        {
            return new SqlText(name, common, common);
        }

        return files.TryGetValue(name + ".sqlite.sql", out var sqlite) && files.TryGetValue(name + ".sqlserver.sql", out var sqlServer)
            ? new SqlText(name, sqlite, sqlServer)
            : throw new InvalidOperationException(
                $"No embedded statement '{name}' in {assembly.GetName().Name}: expected {name}.sql, or {name}.sqlite.sql and {name}.sqlserver.sql.");
    }

    /// <summary>The text for <paramref name="dialect"/>.</summary>
    public string For(DialectName dialect) => dialect == DialectName.Sqlite ? _sqlite : _sqlServer;

    /// <summary>Every embedded statement of an assembly by file name, migrations left out.</summary>
    public static IReadOnlyDictionary<string, string> FilesOf(Assembly assembly) => Files.GetOrAdd(assembly, ReadAll);

    private static Dictionary<string, string> ReadAll(Assembly assembly)
    {
        var files = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var resource in assembly.GetManifestResourceNames())
        {
            var path = resource.Replace('\\', '/');
            if (path.EndsWith(".sql", StringComparison.Ordinal) && !path.StartsWith("Migrations/", StringComparison.Ordinal))
            {
                using var reader = new StreamReader(assembly.GetManifestResourceStream(resource)!);
                files.Add(path[(path.LastIndexOf('/') + 1)..], reader.ReadToEnd());
            }
        }

        return files;
    }
}
