namespace ColumnTool.Lines;

/// <summary>A question from when its line is read until it is answered.</summary>
internal sealed class Pending(Envelope envelope, byte[] line)
{
    private readonly Lock gate = new();
    private State state = State.Waiting;
    private CancellationTokenSource? running;

    private enum State
    {
        Waiting,
        Running,
        Over,
    }

    public Envelope Envelope => envelope;

    public byte[] Line => line;

    /// <summary>Whether it was taken back while it was being answered.</summary>
    public bool IsTakenBack { get; private set; }

    /// <summary>Begins to answer it; false if it was taken back before.</summary>
    /// <param name="source">Is cancelled when it is taken back.</param>
    public bool TryBegin(CancellationTokenSource source)
    {
        lock (gate)
        {
            if (state != State.Waiting)
            {
                return false;
            }

            (state, running) = (State.Running, source);
            return true;
        }
    }

    /// <summary>It is answered; from now on it cannot be taken back.</summary>
    public void End()
    {
        lock (gate)
        {
            (state, running) = (State.Over, null);
        }
    }

    /// <summary>Takes it back; true if nobody has begun to answer it, so that whoever takes it back has to say so.</summary>
    public bool TakeBack()
    {
        lock (gate)
        {
            if (state == State.Waiting)
            {
                state = State.Over;
                return true;
            }

            IsTakenBack = state == State.Running;
            running?.Cancel();
            return false;
        }
    }
}
