using Microsoft.AspNetCore.Http.Features;

namespace Offcuts.Host.InProcess;

/// <summary>An answer, gathered whole before the client sees it. It counts as started with the first byte that the application flushes.</summary>
internal sealed class InProcessResponse : IHttpResponseFeature, IDisposable
{
    private readonly MemoryStream body = new();
    private readonly Stack<Func<Task>> starting = new();
    private readonly Stack<Func<Task>> completed = new();
    private int status = StatusCodes.Status200OK;

    public InProcessResponse() => BodyFeature = new StreamResponseBodyFeature(body);

    /// <summary>The body.</summary>
    public StreamResponseBodyFeature BodyFeature { get; }

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
    public Stream Body { get => body; set => throw new NotSupportedException("Replace the body by IHttpResponseBodyFeature."); }

    /// <inheritdoc/>
    public bool HasStarted => body.Length > 0;

    /// <inheritdoc/>
    public void OnStarting(Func<object, Task> callback, object state) => starting.Push(() => callback(state));

    /// <inheritdoc/>
    public void OnCompleted(Func<object, Task> callback, object state) => completed.Push(() => callback(state));

    /// <summary>Ends the answer; headers may still change until here, for nothing of it was sent.</summary>
    public async Task EndAsync()
    {
        foreach (var callback in starting.Concat(completed))
        {
            await callback();
        }

        await BodyFeature.CompleteAsync();
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        BodyFeature.Dispose();
        body.Dispose();
    }

    /// <summary>The body for the client; call it after <see cref="EndAsync"/>.</summary>
    public ByteArrayContent Content() => new(body.ToArray());
}
