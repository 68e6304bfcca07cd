using LabPipeline.Intake.Archive;

namespace LabPipeline.Intake.Tests.Archive;

/// <summary>A disk in memory that loses power at a chosen operation and then holds what was flushed, and of the rest whatever chance kept.</summary>
/// <remarks>Bytes are flushed with their file, a name with its folder; a renamed file lies after the crash under the old name, the new one, both or none.</remarks>
internal sealed class ForgetfulDisk(string root, int operationsLeft = int.MaxValue, bool ignoresFlushes = false) : IArchiveDisk
{
    private readonly Dictionary<string, Node> _names = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Node> _flushedNames = new(StringComparer.Ordinal);
    private int _operationsLeft = operationsLeft;

    public void CreateFolder(string folder)
    {
        if (folder != root && !_names.ContainsKey(folder))
        {
            CreateFolder(Path.GetDirectoryName(folder)!);
            Work();
            _names.Add(folder, new Node());
        }
    }

    public Stream Create(string path)
    {
        Work();
        var node = new Node();
        _names.Add(path, node);
        return new OpenFile(this, node);
    }

    public Stream Append(string path) => _names.TryGetValue(path, out var node) ? new OpenFile(this, node) : Create(path);

    public void Flush(Stream file)
    {
        Work();
        if (!ignoresFlushes)
        {
            ((OpenFile)file).Node.Flush();
        }
    }

    public void FlushFolder(string folder)
    {
        Work();
        if (!ignoresFlushes)
        {
            Keep(_flushedNames, folder, _ => true);
        }
    }

    public void Move(string from, string to)
    {
        Work();
        _names.Remove(from, out var node);
        _names[to] = node!;
    }

    public void Delete(string path)
    {
        if (_names.ContainsKey(path))
        {
            Work();
            _names.Remove(path);
        }
    }

    public Stream Open(string path) => _names.TryGetValue(path, out var node) ? new MemoryStream([.. node.Bytes]) : throw new FileNotFoundException("Lost with the power.", path);

    public IReadOnlyList<string> List(string folder) => [.. _names.Keys.Where(path => Path.GetDirectoryName(path) == folder)];

    /// <summary>The disk as the next process finds it.</summary>
    public ForgetfulDisk AfterCrash(Random chance, int operations = int.MaxValue)
    {
        var kept = new Dictionary<string, Node>(_flushedNames, StringComparer.Ordinal);
        foreach (var folder in _names.Keys.Concat(_flushedNames.Keys).Select(path => Path.GetDirectoryName(path)!).Distinct().ToList())
        {
            // Changes of names that nobody flushed may have reached the disk, each for itself.
            Keep(kept, folder, _ => chance.Next(2) == 0);
        }

        var after = new ForgetfulDisk(root, operations, ignoresFlushes);
        foreach (var (path, node) in kept.Where(entry => IsReachable(entry.Key, kept)))
        {
            after._names.Add(path, node.AfterCrash(chance));
            after._flushedNames.Add(path, after._names[path]);
        }

        return after;
    }

    private bool IsReachable(string path, Dictionary<string, Node> kept)
    {
        var folder = Path.GetDirectoryName(path)!;
        return folder == root || (kept.ContainsKey(folder) && IsReachable(folder, kept));
    }

    private void Keep(Dictionary<string, Node> kept, string folder, Func<string, bool> reached)
    {
        foreach (var path in _names.Keys.Union(kept.Keys).Where(path => Path.GetDirectoryName(path) == folder).Where(reached).ToList())
        {
            if (_names.TryGetValue(path, out var node))
            {
                kept[path] = node;
            }
            else
            {
                kept.Remove(path);
            }
        }
    }

    private void Work()
    {
        if (_operationsLeft-- <= 0)
        {
            throw new PowerLossException();
        }
    }

    private sealed class Node
    {
        private int _flushed;

        public List<byte> Bytes { get; } = [];

        public void Flush() => _flushed = Bytes.Count;

        public Node AfterCrash(Random chance)
        {
            var after = new Node();
            after.Bytes.AddRange(Bytes.Take(chance.Next(_flushed, Bytes.Count + 1)));
            after.Flush();
            return after;
        }
    }

    private sealed class OpenFile(ForgetfulDisk disk, Node node) : MemoryStream
    {
        public Node Node => node;

        public override void Write(byte[] buffer, int offset, int count) => Write(buffer.AsSpan(offset, count));

        public override void Write(ReadOnlySpan<byte> buffer)
        {
            disk.Work();
            node.Bytes.AddRange(buffer);
        }
    }
}
