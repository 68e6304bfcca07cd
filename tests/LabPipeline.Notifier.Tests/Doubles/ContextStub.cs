using System.Reflection;
using MassTransit;

namespace LabPipeline.Notifier.Tests.Doubles;

/// <summary>The three things a consumer reads of its context.</summary>
// The runtime derives the proxy from this class, so it cannot be sealed.
#pragma warning disable CA1852
internal class ContextStub : DispatchProxy
#pragma warning restore CA1852
{
    private readonly Dictionary<string, object?> _values = [];

    public static ConsumeContext<T> Of<T>(T message, Guid messageId, CancellationToken cancellationToken)
        where T : class
    {
        var context = Create<ConsumeContext<T>, ContextStub>();
        var values = ((ContextStub)(object)context)._values;
        values["get_Message"] = message;
        values["get_MessageId"] = messageId;
        values["get_CancellationToken"] = cancellationToken;
        return context;
    }

    protected override object? Invoke(MethodInfo? targetMethod, object?[]? args) => _values[targetMethod!.Name];
}
