using System.Text;
using System.Text.Json;
using System.Xml.Linq;

namespace LabPipeline.Conventions.Tests;

/// <summary>docs/dependencies.md lists every package that ships with a service, with the version that is locked and the licence the package itself states.</summary>
/// <remarks><c>LABPIPELINE_WRITE_DOCS=1</c> writes the table anew instead.</remarks>
public sealed class DependencyListTests
{
    private const string TableHead = "| package | version | licence | asked for by |\n|---|---|---|---|\n";

    /// <summary>Packages that state a file or an address in place of a licence expression. The first is from memory, the second from its file.</summary>
    private static readonly Dictionary<string, string> Read = new(StringComparer.OrdinalIgnoreCase)
    {
        ["K4os.Compression.LZ4"] = "MIT",
        ["Microsoft.Data.SqlClient.SNI.runtime"] = "Microsoft Software License Terms (file in the package)",
    };

    private static readonly string[] Permissive = ["MIT", "Apache-2.0", "BSD-3-Clause", "Apache-2.0 OR MPL-2.0", "MS-PL", "Zlib", "PostgreSQL", "Unlicense"];

    private static string Page => Path.Combine(RepositoryFolder.Root, "docs", "dependencies.md");

    [Fact]
    public void Dependencies_WhenHeldAgainstTheLockFiles_AreListedAsTheyAre()
    {
        var page = File.ReadAllText(Page).ReplaceLineEndings("\n");
        var head = page[..(page.IndexOf(TableHead, StringComparison.Ordinal) + TableHead.Length)];
        var table = Table();
        if (Environment.GetEnvironmentVariable("LABPIPELINE_WRITE_DOCS") == "1")
        {
            File.WriteAllText(Page, head + table);
        }

        Assert.Equal(head + table, File.ReadAllText(Page).ReplaceLineEndings("\n"));
    }

    [Fact]
    public void Dependencies_WhenTheyStateALicence_StateAPermissiveOne() => Assert.All(
        Shipped().Where(package => !Read.ContainsKey(package.Name)),
        package => Assert.Contains(LicenceOf(package.Name, package.Version), Permissive));

    private static string Table()
    {
        var table = new StringBuilder();
        foreach (var (name, version, askedFor) in Shipped())
        {
            table.Append(System.Globalization.CultureInfo.InvariantCulture, $"| {name} | {version} | {LicenceOf(name, version)} | {askedFor} |\n");
        }

        return table.ToString();
    }

    private static IEnumerable<(string Name, string Version, string AskedFor)> Shipped() => Directory
        .EnumerateFiles(Path.Combine(RepositoryFolder.Root, "services"), "packages.lock.json", SearchOption.AllDirectories)
        .SelectMany(Locked)
        .GroupBy(package => (package.Name, package.Version))
        .Select(group => (group.Key.Name, group.Key.Version, AskedFor: string.Join(", ", group.Where(package => package.Direct).Select(package => package.Service).Order(StringComparer.Ordinal))))
        .Select(package => package with { AskedFor = package.AskedFor.Length > 0 ? package.AskedFor : "other packages" })
        .OrderBy(package => package.Name, StringComparer.OrdinalIgnoreCase)
        .ThenBy(package => package.Version, StringComparer.Ordinal);

    private static IEnumerable<(string Service, string Name, string Version, bool Direct)> Locked(string file)
    {
        using var json = JsonDocument.Parse(File.ReadAllText(file));
        var service = Path.GetFileName(Path.GetDirectoryName(file))!;
        return
        [
            .. json.RootElement.GetProperty("dependencies").EnumerateObject()
                .SelectMany(framework => framework.Value.EnumerateObject())
                .Where(package => package.Value.GetProperty("type").GetString() != "Project")
                .Select(package => (service, package.Name, package.Value.GetProperty("resolved").GetString()!, package.Value.GetProperty("type").GetString() == "Direct")),
        ];
    }

    private static string LicenceOf(string name, string version)
    {
        if (Read.TryGetValue(name, out var read))
        {
            return read;
        }

        var packages = Environment.GetEnvironmentVariable("NUGET_PACKAGES") is { Length: > 0 } folder
            ? folder
            : Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.UserProfile), ".nuget", "packages");
        var file = Path.Combine(packages, name.ToLowerInvariant(), version.ToLowerInvariant(), name.ToLowerInvariant() + ".nuspec");
        return XDocument.Load(file).Descendants().Single(element => element.Name.LocalName == "license").Value;
    }
}
