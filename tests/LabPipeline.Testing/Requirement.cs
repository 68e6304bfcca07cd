namespace LabPipeline.Testing;

/// <summary>What some tests need from the machine beyond .NET. A test without it is skipped and says why, unless this run requires it.</summary>
/// <remarks>
/// <c>LABPIPELINE_REQUIRE=rabbitmq,sqlserver</c> turns those skips into failures, so that a complete machine cannot pass by skipping.
/// Use: <c>Assert.Skip(Requirement.Waive(Requirement.RabbitMq, "no rabbitmq-server is installed"))</c>.
/// </remarks>
public static class Requirement
{
    public const string RabbitMq = "rabbitmq";

    public const string SqlServer = "sqlserver";

    public const string Browser = "browser";

    public const string R = "r";

    public const string Python = "python";

    private const string Variable = "LABPIPELINE_REQUIRE";

    /// <summary>The text of the skip.</summary>
    /// <exception cref="InvalidOperationException">This run requires <paramref name="name"/>.</exception>
    public static string Waive(string name, string reason) => IsRequired(name, Environment.GetEnvironmentVariable(Variable))
        ? throw new InvalidOperationException($"{Variable} names {name}, so its tests may not be skipped, but {reason}.")
        : $"{reason}; {Variable}={name} would make this a failure.";

    /// <summary>Whether <paramref name="list"/>, separated by commas or blanks, names <paramref name="name"/>.</summary>
    public static bool IsRequired(string name, string? list) =>
        list?.Split([',', ' '], StringSplitOptions.RemoveEmptyEntries).Contains(name, StringComparer.OrdinalIgnoreCase) == true;
}
