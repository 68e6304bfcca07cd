using System.Net;
using LabPipeline.Notifier.Channels;

namespace LabPipeline.Notifier.Tests.Doubles;

/// <summary>A name service whose owner answers differently each time: the last answer is repeated.</summary>
internal sealed class FixedResolver(params string[][] answers) : IHostResolver
{
    public int Asked { get; private set; }

    public Task<IPAddress[]> ResolveAsync(string host, CancellationToken cancellationToken)
    {
        var answer = answers[Math.Min(Asked, answers.Length - 1)];
        Asked++;
        return Task.FromResult(answer.Select(IPAddress.Parse).ToArray());
    }
}
