using LabPipeline.Intake.Folders;
using LabPipeline.Testing;

namespace LabPipeline.Intake.Tests.Folders;

/// <summary>A watcher only wakes the scan; without one the timer does, later.</summary>
public sealed class FolderWatcherTests
{
    // Linux gives each user 128 by default (inotify(7), max_user_instances).
    private const int MoreThanAnySystemGives = 20_000;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    [Shows(3)]
    public async Task Arm_WhenTheSystemHasNoWatcherLeft_LeavesTheTimerAndIsArmedOnceThereIsOne()
    {
        using var folder = new ScratchFolder();
        using var watcher = new FolderWatcher();
        var taken = new List<FileSystemWatcher>();
        try
        {
            Assert.SkipUnless(TakeAll(folder.Path, taken), "this system gives more watchers than a test should take");

            watcher.Arm(folder.Path);
            await File.WriteAllTextAsync(folder.File("unseen.csv"), "x", Stop);
            await watcher.WaitAsync(TimeSpan.FromMilliseconds(300), Stop);
        }
        finally
        {
            taken.ForEach(other => other.Dispose());
        }

        // The system takes the others back a moment later, and whoever else runs on it may have them first; a worker arms with every look.
        var woken = watcher.WaitAsync(TimeSpan.FromMinutes(5), Stop);
        await Wait.UntilAsync(() => Task.FromResult(woken.IsCompleted), () =>
        {
            watcher.Arm(folder.Path);
            File.AppendAllText(folder.File("seen.csv"), "x");
        });
    }

    private static bool TakeAll(string folder, List<FileSystemWatcher> taken)
    {
        try
        {
            while (taken.Count < MoreThanAnySystemGives)
            {
                var watcher = new FileSystemWatcher(folder);
                taken.Add(watcher);
                watcher.EnableRaisingEvents = true;
            }

            return false;
        }
        catch (IOException)
        {
            return true;
        }
    }
}
