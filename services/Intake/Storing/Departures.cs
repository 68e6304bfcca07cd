using LabPipeline.Intake.Folders;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Durability;
using LabPipeline.Warehouse.Facts;
using Microsoft.Extensions.Logging;

namespace LabPipeline.Intake.Storing;

/// <summary>Moves originals out of the drop folder while the next files are stored, and notes it in whichever transaction comes next.</summary>
/// <remarks>A transaction of its own for every batch would wait for the disk once more. What is not noted yet when the process dies is found at its next start.</remarks>
internal sealed class Departures(DropFolder folder, ILogger log)
{
    private static readonly Task<List<int>> Nothing = Task.FromResult<List<int>>([]);

    private readonly List<int> _moved = [];
    private Task<List<int>> _moving = Nothing;
    private int _noting;

    public bool AreNoted => _moved.Count == 0;

    /// <summary>Begins to move the originals of a committed batch, once those of the batch before have left.</summary>
    public async Task BeginAsync(IReadOnlyList<TakenFile> taken)
    {
        await EndAsync().ConfigureAwait(false);
        _moving = Task.Run(() => Move(taken));
    }

    /// <summary>Waits until nothing moves any more.</summary>
    public async Task EndAsync()
    {
        var moving = _moving;
        _moving = Nothing;
        _moved.AddRange(await moving.ConfigureAwait(false));
    }

    /// <summary>Notes in the ledger what has left; <see cref="Forget"/> follows when that is committed.</summary>
    public Task NoteAsync(WarehouseSession session)
    {
        _noting = _moved.Count;
        return _noting == 0 ? Task.CompletedTask : FileLedgerStore.MarkPutAwayAsync(session, [.. _moved]);
    }

    public void Forget()
    {
        _moved.RemoveRange(0, _noting);
        _noting = 0;
    }

    private List<int> Move(IReadOnlyList<TakenFile> taken)
    {
        var moved = new List<int>(taken.Count);
        foreach (var file in taken)
        {
            try
            {
                PutAway.Move(folder, file);
                moved.Add(file.ArrivalId);
                log.LogInformation("FileTaken {Folder} {Name} {Refused}", folder.Kind, file.File.Name, file.RefusedBecause is not null);
            }
            catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
            {
                // It is in the warehouse already; the next look recognises it and moves it then.
                log.LogWarning(exception, "PutAwayDelayed {Folder} {Name}", folder.Kind, file.File.Name);
            }
        }

        if (moved.Count > 0)
        {
            CrashPoint.Passed(DurableStep.BatchMoved);
        }

        return moved;
    }
}
