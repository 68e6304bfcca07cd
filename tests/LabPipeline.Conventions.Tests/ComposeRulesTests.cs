using System.Diagnostics;

namespace LabPipeline.Conventions.Tests;

/// <summary>docker-compose.yml starts every deployable and is understood by the program that reads it.</summary>
public sealed class ComposeRulesTests
{
    private static readonly string[] Passwords = ["RABBIT_PASSWORD", "SQL_PASSWORD", "SQL_SERVICE_PASSWORD"];

    [Fact]
    public void Compose_WhenServicesAreDeployable_BuildsEachOfThem()
    {
        var compose = File.ReadAllText(Path.Combine(RepositoryFolder.Root, "docker-compose.yml"));

        var deployables = Directory.EnumerateFiles(Path.Combine(RepositoryFolder.Root, "services"), "Program.cs", SearchOption.AllDirectories)
            .Where(file => !file.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal))
            .Select(file => new DirectoryInfo(Path.GetDirectoryName(file)!).Name)
            .ToList();

        Assert.True(deployables.Count >= 8, $"Found {deployables.Count} deployables; expected eight or more.");
        Assert.All(deployables, service => Assert.Contains($"{{SERVICE: {service}}}", compose, StringComparison.Ordinal));
    }

    [Fact]
    public async Task Compose_WhenPasswordsAreSet_IsUnderstood() => Assert.Equal((0, ""), await ConfigAsync(withPasswords: true));

    [Fact]
    public async Task Compose_WhenAPasswordIsMissing_IsRefusedAndNamesIt()
    {
        var (code, errors) = await ConfigAsync(withPasswords: false);

        Assert.NotEqual(0, code);
        Assert.Contains("choose a password", errors, StringComparison.Ordinal);
    }

    private static async Task<(int Code, string Errors)> ConfigAsync(bool withPasswords)
    {
        var program = Environment.GetEnvironmentVariable("PATH")!.Split(Path.PathSeparator)
            .Select(folder => Path.Combine(folder, "docker-compose"))
            .FirstOrDefault(File.Exists);
        Assert.SkipWhen(program is null, "no docker-compose on this machine to read docker-compose.yml");
        var start = new ProcessStartInfo(program, ["config", "--quiet"])
        {
            WorkingDirectory = RepositoryFolder.Root,
            RedirectStandardError = true,
            RedirectStandardOutput = true,
        };
        start.Environment["ACCEPT_EULA"] = "Y";
        foreach (var password in Passwords)
        {
            start.Environment.Remove(password);
            if (withPasswords)
            {
                start.Environment[password] = "a-password-of-this-test";
            }
        }

        using var process = Process.Start(start)!;
        var errors = await process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        return (process.ExitCode, errors);
    }
}
