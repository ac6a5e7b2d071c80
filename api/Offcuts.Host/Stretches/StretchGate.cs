using Offcuts.Host.Http;

namespace Offcuts.Host.Stretches;

/// <summary>Lets one question at a time through: each takes all the processors that there are.</summary>
internal sealed class StretchGate : IDisposable
{
    private readonly SemaphoreSlim free = new(1, 1);

    /// <summary>Takes the turn, which ends with what is given.</summary>
    /// <exception cref="RefusedException">Another question is under way.</exception>
    public IDisposable Enter() => free.Wait(0) ? new Turn(free) : throw new RefusedException(
        StatusCodes.Status429TooManyRequests, "Another such question is being answered: try again in a few seconds.", retryAfterSeconds: 5);

    public void Dispose() => free.Dispose();

    private sealed class Turn(SemaphoreSlim free) : IDisposable
    {
        public void Dispose() => free.Release();
    }
}
