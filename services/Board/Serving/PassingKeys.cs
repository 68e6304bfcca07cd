using System.Collections.Concurrent;
using System.Xml.Linq;
using Microsoft.AspNetCore.DataProtection.Repositories;

namespace LabPipeline.Board.Serving;

/// <summary>Keys that live as long as the process: nothing the board signs is kept at a browser, so none is left in somebody's home folder.</summary>
internal sealed class PassingKeys : IXmlRepository
{
    private readonly ConcurrentQueue<XElement> _keys = new();

    public IReadOnlyCollection<XElement> GetAllElements() => [.. _keys];

    public void StoreElement(XElement element, string friendlyName) => _keys.Enqueue(element);
}
