namespace LabPipeline.Intake.Folders;

/// <summary>Wakes the scan when the operating system says something happened. It may miss anything and is never believed.</summary>
public sealed class FolderWatcher : IDisposable
{
    private readonly SemaphoreSlim _signal = new(0, 1);
    private FileSystemWatcher? _watcher;
    private string? _identity;

    /// <summary>Arms the watcher, or arms it again when the folder was replaced; without one the scan's timer is enough.</summary>
    public void Arm(string folder)
    {
        var identity = Directory.GetCreationTimeUtc(folder).Ticks.ToString(System.Globalization.CultureInfo.InvariantCulture) + folder;
        if (_watcher is not null && identity == _identity)
        {
            return;
        }

        _watcher?.Dispose();
        _watcher = null;
        _identity = identity;
        try
        {
            var watcher = new FileSystemWatcher(folder) { NotifyFilter = NotifyFilters.FileName | NotifyFilters.Size | NotifyFilters.LastWrite };
            watcher.Created += (_, _) => Wake();
            watcher.Changed += (_, _) => Wake();
            watcher.Renamed += (_, _) => Wake();
            watcher.Error += (_, _) => Wake();
            watcher.EnableRaisingEvents = true;
            _watcher = watcher;
        }
        catch (IOException)
        {
            // The system has no watcher left to give; scanning on the timer finds everything, only later.
            _identity = null;
        }
    }

    public Task WaitAsync(TimeSpan atMost, CancellationToken cancellationToken) => _signal.WaitAsync(atMost, cancellationToken);

    public void Dispose()
    {
        _watcher?.Dispose();
        _signal.Dispose();
    }

    private void Wake()
    {
        lock (_signal)
        {
            if (_signal.CurrentCount == 0)
            {
                _signal.Release();
            }
        }
    }
}
