using System.Diagnostics;

namespace LabPipeline.Conventions.Tests;

/// <summary>The unit files of docs/operations are understood by systemd itself, for every deployable.</summary>
public sealed class SystemdUnitTests
{
    [Theory]
    [InlineData("Station")]
    [InlineData("SugarIntake")]
    [InlineData("Board")]
    public async Task Unit_WhenVerifiedBySystemd_HasNoFault(string service)
    {
        const string Program = "/usr/bin/systemd-analyze";
        Assert.SkipUnless(File.Exists(Program), "no systemd-analyze on this machine to read the unit files");
        var folder = Directory.CreateTempSubdirectory("labpipeline-units-").FullName;
        try
        {
            var units = Path.Combine(RepositoryFolder.Root, "docs", "operations");
            File.Copy(Path.Combine(units, "labpipeline.target"), Path.Combine(folder, "labpipeline.target"));
            var unit = Path.Combine(folder, $"labpipeline@{service}.service");

            // The program is not installed on the machine that tests; another one stands in for it.
            await File.WriteAllTextAsync(
                unit,
                (await File.ReadAllTextAsync(Path.Combine(units, "labpipeline@.service"), TestContext.Current.CancellationToken))
                    .Replace("/opt/labpipeline/%i/LabPipeline.%i", "/bin/true", StringComparison.Ordinal),
                TestContext.Current.CancellationToken);

            Assert.Equal((0, ""), await VerifyAsync(Program, unit));
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static async Task<(int Code, string Said)> VerifyAsync(string program, string unit)
    {
        var start = new ProcessStartInfo(program, ["verify", "--man=no", unit]) { RedirectStandardError = true, RedirectStandardOutput = true };
        using var process = Process.Start(start)!;
        var errors = process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        var output = await process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);

        // What it says about other units of the machine is not ours.
        var ours = (output + await errors).Split('\n').Where(line => line.Contains("labpipeline", StringComparison.OrdinalIgnoreCase));
        return (process.ExitCode, string.Join('\n', ours));
    }
}
