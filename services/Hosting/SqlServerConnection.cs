using LabPipeline.Hosting.Settings;
using Microsoft.Data.SqlClient;

namespace LabPipeline.Hosting;

/// <summary>Reads and checks the connection string of the warehouse; no fault repeats it, since it may hold a password.</summary>
public static class SqlServerConnection
{
    private const string Where = "Lab:SqlServer";

    private static readonly string[] Loopback = ["localhost", "127.0.0.1", "::1", ".", "(local)"];

    /// <returns>The connection string to use, or null when there are faults.</returns>
    public static string? Read(SqlServerOptions options, out IReadOnlyList<string> faults)
    {
        ArgumentNullException.ThrowIfNull(options);
        var found = new List<string>();
        var text = ReadText(options, found);
        var builder = text is null ? null : Parse(text, found);
        if (options.CommandTimeoutSeconds < 1)
        {
            found.Add($"{Where}:CommandTimeoutSeconds is {options.CommandTimeoutSeconds}; expected at least 1.");
        }

        if (builder is not null)
        {
            Check(builder, found);
        }

        faults = found;
        if (builder is null || found.Count > 0)
        {
            return null;
        }

        if (!builder.ShouldSerialize("Command Timeout"))
        {
            builder.CommandTimeout = options.CommandTimeoutSeconds;
        }

        return builder.ToString();
    }

    private static string? ReadText(SqlServerOptions options, List<string> faults)
    {
        switch (options.ConnectionString.Length > 0, options.ConnectionStringFile.Length > 0)
        {
            case (true, false):
                return options.ConnectionString;
            case (false, true):
                return ReadFile(options.ConnectionStringFile, faults);
            case (true, true):
                faults.Add($"{Where} has both ConnectionString and ConnectionStringFile; expected one of them.");
                return null;
            default:
                faults.Add(
                    $"Lab:Warehouse is sqlserver and {Where} has neither ConnectionString nor ConnectionStringFile; "
                    + "expected one of them, the first best from the environment (Lab__SqlServer__ConnectionString).");
                return null;
        }
    }

    private static string? ReadFile(string file, List<string> faults)
    {
        var secret = SecretSource.Read(file, "", out var fault);
        if (fault is not null)
        {
            faults.Add($"{Where}:ConnectionStringFile: {fault}");
        }

        return secret?.Reveal().Trim();
    }

    private static SqlConnectionStringBuilder? Parse(string text, List<string> faults)
    {
        try
        {
            return new SqlConnectionStringBuilder(text);
        }
        catch (Exception exception) when (exception is ArgumentException or FormatException or KeyNotFoundException)
        {
            faults.Add($"The connection string of {Where} cannot be understood; expected 'Server=…;Database=…;User ID=…;Password=…' or with Integrated Security.");
            return null;
        }
    }

    private static void Check(SqlConnectionStringBuilder builder, List<string> faults)
    {
        if (builder.DataSource.Length == 0)
        {
            faults.Add($"The connection string of {Where} names no server; expected Server=host,port.");
        }

        if (builder.InitialCatalog.Length == 0)
        {
            faults.Add($"The connection string of {Where} names no database; expected Database=name, else the tables would lie in the login's default database.");
        }

        if (builder.Encrypt == SqlConnectionEncryptOption.Optional && !IsLoopback(builder.DataSource))
        {
            faults.Add(
                $"The connection string of {Where} turns encryption off (Encrypt=False) for server {builder.DataSource}; expected it on. "
                + "Trust the laboratory's own certificate with Server Certificate=file, as docs/specs/sql-server.md shows.");
        }

        if (builder.ServerCertificate is { Length: > 0 } certificate && !File.Exists(certificate))
        {
            faults.Add($"The connection string of {Where} names the server certificate {certificate}, and there is no such file; expected the certificate the server shows.");
        }
    }

    private static bool IsLoopback(string server)
    {
        var host = server.StartsWith("tcp:", StringComparison.OrdinalIgnoreCase) ? server["tcp:".Length..] : server;
        return Loopback.Contains(host.Split(',', '\\')[0].Trim(), StringComparer.OrdinalIgnoreCase);
    }
}
