using System.IO.Pipelines;
using Microsoft.AspNetCore.Http.Features;

namespace Offcuts.Host.InProcess;

/// <summary>
/// The body of an answer: gathered whole, unless the application asks for it not to be buffered before it writes any of it, as it does for events. Then
/// the client reads what is written as it comes.
/// </summary>
internal sealed class InProcessBody : IHttpResponseBodyFeature, IDisposable
{
    private readonly MemoryStream whole = new();
    private readonly StreamResponseBodyFeature buffered;
    private readonly TaskCompletionSource streaming = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private Pipe? pipe;

    public InProcessBody() => buffered = new StreamResponseBodyFeature(whole);

    /// <summary>Completes when the client may begin to read.</summary>
    public Task Streaming => streaming.Task;

    /// <summary>Whether the client may have seen any of it.</summary>
    public bool HasStarted => pipe is not null || whole.Length > 0;

    /// <inheritdoc/>
    public Stream Stream => pipe?.Writer.AsStream(leaveOpen: true) ?? buffered.Stream;

    /// <inheritdoc/>
    public PipeWriter Writer => pipe?.Writer ?? buffered.Writer;

    /// <summary>What the client reads while it is written.</summary>
    public Stream Reader => pipe!.Reader.AsStream();

    /// <inheritdoc/>
    public void DisableBuffering()
    {
        if (!HasStarted)
        {
            // The writer never waits: a client that has stopped reading aborts the request.
            pipe = new Pipe(new PipeOptions(pauseWriterThreshold: 0));
            streaming.SetResult();
        }
    }

    /// <inheritdoc/>
    public Task StartAsync(CancellationToken cancellationToken = default) => pipe is null ? buffered.StartAsync(cancellationToken) : Task.CompletedTask;

    /// <inheritdoc/>
    public Task SendFileAsync(string path, long offset, long? count, CancellationToken cancellationToken = default) =>
        pipe is null ? buffered.SendFileAsync(path, offset, count, cancellationToken) : SendFileFallback.SendFileAsync(Stream, path, offset, count, cancellationToken);

    /// <inheritdoc/>
    public async Task CompleteAsync()
    {
        if (pipe is null)
        {
            await buffered.CompleteAsync();
        }
        else
        {
            await pipe.Writer.CompleteAsync();
        }
    }

    /// <summary>Ends what the client reads with a fault.</summary>
    public ValueTask FailAsync(Exception fault) => pipe?.Writer.CompleteAsync(fault) ?? ValueTask.CompletedTask;

    /// <summary>The whole of what was gathered; call it after <see cref="CompleteAsync"/>.</summary>
    public byte[] ToArray() => whole.ToArray();

    /// <inheritdoc/>
    public void Dispose()
    {
        buffered.Dispose();
        whole.Dispose();
    }
}
