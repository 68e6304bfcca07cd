using LabPipeline.Hosting.Bus;

namespace LabPipeline.Intake.Tests.Histories;

/// <summary>A broker that goes away, takes nothing for a while, or loses an answer, and never a message it took.</summary>
internal sealed class HistoryBroker : IBusTransport
{
    private readonly Lock _guard = new();
    private readonly List<(Guid Id, object Message)> _held = [];
    private readonly HashSet<Guid> _taken = [];
    private readonly List<HistoryLine> _lines = [];
    private TaskCompletionSource? _block;
    private bool _losesAnswer;

    public bool EndsHere => false;

    public int InFlight => 3;

    public bool IsThere { get; private set; } = true;

    public bool IsBlocked => _block is not null;

    public bool TakesMessages => IsThere && !IsBlocked;

    /// <summary>What is not acknowledged yet.</summary>
    public IReadOnlyList<(Guid Id, object Message)> Held
    {
        get
        {
            lock (_guard)
            {
                return [.. _held];
            }
        }
    }

    public bool HasTaken(Guid id)
    {
        lock (_guard)
        {
            return _taken.Contains(id);
        }
    }

    public IBusLine Open()
    {
        lock (_guard)
        {
            var line = new HistoryLine(this);
            _lines.Add(line);
            return line;
        }
    }

    public void Stop()
    {
        lock (_guard)
        {
            IsThere = false;
            _lines.ForEach(line => line.Break("the broker went away"));
            _lines.Clear();
        }
    }

    public void Block()
    {
        lock (_guard)
        {
            _block ??= new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        }
    }

    public void ComeBack()
    {
        lock (_guard)
        {
            IsThere = true;
            _block?.SetResult();
            _block = null;
        }
    }

    public void LoseNextAnswer() => _losesAnswer = true;

    /// <summary>Ends when the message is held safely; while the broker is blocked it does not end.</summary>
    public async Task TakeAsync(HistoryLine line, Guid id, object message, CancellationToken cancellationToken)
    {
        while (!TryTake(line, id, message, out var block))
        {
            await block.WaitAsync(cancellationToken);
        }
    }

    public void Acknowledge(Guid id)
    {
        lock (_guard)
        {
            _held.RemoveAt(_held.FindIndex(held => held.Id == id));
        }
    }

    private bool TryTake(HistoryLine line, Guid id, object message, out Task block)
    {
        lock (_guard)
        {
            block = _block?.Task ?? Task.CompletedTask;
            if (!_lines.Contains(line))
            {
                throw new IOException("the connection is gone");
            }

            if (_block is not null)
            {
                return false;
            }

            _held.Add((id, message));
            _taken.Add(id);
            if (_losesAnswer)
            {
                _losesAnswer = false;
                _lines.Remove(line);
                line.Break("the connection broke");
                throw new IOException("the connection broke before the answer");
            }

            return true;
        }
    }
}
