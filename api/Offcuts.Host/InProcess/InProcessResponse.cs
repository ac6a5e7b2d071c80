using Microsoft.AspNetCore.Http.Features;

namespace Offcuts.Host.InProcess;

/// <summary>An answer. It counts as started with the first byte that the application flushes, or when it is to be read as it is written.</summary>
internal sealed class InProcessResponse : IHttpResponseFeature, IDisposable
{
    private readonly Stack<Func<Task>> starting = new();
    private readonly Stack<Func<Task>> completed = new();
    private int status = StatusCodes.Status200OK;

    /// <summary>The body.</summary>
    public InProcessBody BodyFeature { get; } = new();

    /// <inheritdoc/>
    public int StatusCode
    {
        get => status;
        set => status = HasStarted ? throw new InvalidOperationException("The status cannot be set: the response has already started.") : value;
    }

    /// <inheritdoc/>
    public string? ReasonPhrase { get; set; }

    /// <inheritdoc/>
    public IHeaderDictionary Headers { get; set; } = new HeaderDictionary();

    /// <summary>The body's stream; the application writes to <see cref="BodyFeature"/>.</summary>
    public Stream Body { get => BodyFeature.Stream; set => throw new NotSupportedException("Replace the body by IHttpResponseBodyFeature."); }

    /// <inheritdoc/>
    public bool HasStarted => BodyFeature.HasStarted;

    /// <inheritdoc/>
    public void OnStarting(Func<object, Task> callback, object state) => starting.Push(() => callback(state));

    /// <inheritdoc/>
    public void OnCompleted(Func<object, Task> callback, object state) => completed.Push(() => callback(state));

    /// <summary>Ends the answer; headers may still change until here, for nothing of it was sent.</summary>
    public async Task EndAsync()
    {
        await StartAsync();
        foreach (var callback in completed)
        {
            await callback();
        }

        await BodyFeature.CompleteAsync();
    }

    /// <summary>The headers are settled: the client is to see them before the answer ends.</summary>
    public async Task StartAsync()
    {
        while (starting.TryPop(out var callback))
        {
            await callback();
        }
    }

    /// <inheritdoc/>
    public void Dispose() => BodyFeature.Dispose();

    /// <summary>The body for the client; call it after <see cref="EndAsync"/>.</summary>
    public ByteArrayContent Content() => new(BodyFeature.ToArray());
}
