using System.Threading.Channels;
using LabPipeline.Intake.Reading;
using LabPipeline.Warehouse.Facts;

namespace LabPipeline.Intake.Storing;

/// <summary>Lets a large file be read on one thread while the rows before are inserted on another.</summary>
/// <remarks>Four small batches go round between the two, so memory stays flat; a failed insert stops the reading with its exception.</remarks>
internal sealed class FactPipe : IReadingSink, IAsyncDisposable
{
    private const int BatchSize = 256;
    private const int Batches = 4;

    private readonly Channel<Batch> _empty = Channel.CreateBounded<Batch>(Batches);
    private readonly Channel<Batch> _full = Channel.CreateBounded<Batch>(Batches);
    private readonly Task _inserting;
    private Batch _current = new();

    public FactPipe(IFactLoader loader)
    {
        for (var batch = 1; batch < Batches; batch++)
        {
            _empty.Writer.TryWrite(new Batch());
        }

        _inserting = Task.Factory.StartNew(() => Insert(loader), CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default);
    }

    public void Take(in ParsedReading reading)
    {
        _current.Facts[_current.Count++] = FactSink.FactOf(reading).On(_current.Texts);
        if (_current.Count == BatchSize)
        {
            Hand();
        }
    }

    /// <summary>Waits until everything taken is inserted.</summary>
    public async Task CompleteAsync()
    {
        if (_current.Count > 0)
        {
            Hand();
        }

        _full.Writer.TryComplete();
        await _inserting.ConfigureAwait(false);
    }

    /// <summary>Stops inserting; after a failure elsewhere the transaction is rolled back anyway.</summary>
    public async ValueTask DisposeAsync()
    {
        _full.Writer.TryComplete();
        await Task.WhenAny(_inserting).ConfigureAwait(false);
    }

    private void Hand()
    {
        if (!_full.Writer.TryWrite(_current) || !WaitForEmpty(out _current!))
        {
            // The inserting side ends early only by failing; its exception says why.
            _inserting.GetAwaiter().GetResult();
        }
    }

    private bool WaitForEmpty(out Batch? batch)
    {
        while (!_empty.Reader.TryRead(out batch))
        {
            if (!_empty.Reader.WaitToReadAsync().AsTask().GetAwaiter().GetResult())
            {
                return false;
            }
        }

        return true;
    }

    private void Insert(IFactLoader loader)
    {
        try
        {
            while (_full.Reader.WaitToReadAsync().AsTask().GetAwaiter().GetResult())
            {
                while (_full.Reader.TryRead(out var batch))
                {
                    foreach (ref readonly var fact in batch.Facts.AsSpan(0, batch.Count))
                    {
                        loader.Add(fact);
                    }

                    batch.Count = 0;
                    batch.Texts.Clear();
                    _empty.Writer.TryWrite(batch);
                }
            }
        }
        finally
        {
            _empty.Writer.TryComplete();
            _full.Writer.TryComplete();
        }
    }

    private sealed class Batch
    {
        public NewFact[] Facts { get; } = new NewFact[BatchSize];

        public TextShelf Texts { get; } = TextShelf.For(BatchSize);

        public int Count { get; set; }
    }
}
