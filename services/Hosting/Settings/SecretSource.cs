namespace LabPipeline.Hosting.Settings;

/// <summary>Reads a secret from a file or from the environment, never from the settings themselves.</summary>
public static class SecretSource
{
    private const UnixFileMode OpenToOthers = UnixFileMode.GroupRead | UnixFileMode.GroupWrite | UnixFileMode.OtherRead | UnixFileMode.OtherWrite;

    /// <param name="file">File name, or empty.</param>
    /// <param name="variable">Name of an environment variable, or empty.</param>
    /// <param name="fault">What is wrong, without the secret; null when it was read.</param>
    public static Secret? Read(string file, string variable, out string? fault)
    {
        var text = file.Length > 0 ? ReadFile(file, out fault) : ReadVariable(variable, out fault);
        return text is null ? null : new Secret(text);
    }

    private static string? ReadVariable(string variable, out string? fault)
    {
        var text = variable.Length > 0 ? Environment.GetEnvironmentVariable(variable) : null;
        fault = (variable.Length, text?.Length ?? 0) switch
        {
            (0, _) => "neither a file nor an environment variable is named; expected one of them.",
            (_, 0) => $"environment variable {variable} is not set; expected the secret there, or in a file.",
            _ => null,
        };
        return fault is null ? text : null;
    }

    private static string? ReadFile(string file, out string? fault)
    {
        try
        {
            if (!OperatingSystem.IsWindows() && (File.GetUnixFileMode(file) & OpenToOthers) != 0)
            {
                fault = $"file {file} can be read or written by others than its owner; run chmod 600 on it.";
                return null;
            }

            var text = File.ReadAllText(file).TrimEnd('\r', '\n');
            fault = text.Length == 0 ? $"file {file} is empty; expected the secret in it." : null;
            return fault is null ? text : null;
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            fault = $"file {file} cannot be read ({exception.GetType().Name}); expected the secret in it.";
            return null;
        }
    }
}
