namespace LabPipeline.Hosting.Bus;

/// <summary>The values of <c>Lab:Bus</c>.</summary>
public static class BusNames
{
    public const string InProcess = "in-process";

    public const string RabbitMq = "rabbitmq";
}
