using System.Net;

namespace Offcuts.Host.InProcess;

/// <summary>A body that is read while the application writes it. Whoever is done with it, read to its end or not, ends the request.</summary>
/// <param name="body">What is read.</param>
/// <param name="end">Ends the request.</param>
internal sealed class StreamedContent(Stream body, Action end) : HttpContent
{
    private readonly EndingStream stream = new(body, end);

    /// <inheritdoc/>
    protected override Task<Stream> CreateContentReadStreamAsync() => Task.FromResult<Stream>(stream);

    /// <inheritdoc/>
    protected override Task SerializeToStreamAsync(Stream stream, TransportContext? context) => this.stream.CopyToAsync(stream);

    /// <inheritdoc/>
    protected override bool TryComputeLength(out long length)
    {
        length = 0;
        return false;
    }

    /// <inheritdoc/>
    protected override void Dispose(bool disposing)
    {
        base.Dispose(disposing);
        if (disposing)
        {
            stream.Dispose();
        }
    }

    private sealed class EndingStream(Stream inner, Action end) : Stream
    {
        public override bool CanRead => true;

        public override bool CanSeek => false;

        public override bool CanWrite => false;

        public override long Length => throw new NotSupportedException();

        public override long Position { get => throw new NotSupportedException(); set => throw new NotSupportedException(); }

        public override int Read(byte[] buffer, int offset, int count) => inner.Read(buffer, offset, count);

        public override ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken = default) => inner.ReadAsync(buffer, cancellationToken);

        public override Task<int> ReadAsync(byte[] buffer, int offset, int count, CancellationToken cancellationToken) =>
            inner.ReadAsync(buffer, offset, count, cancellationToken);

        public override void Flush()
        {
            // There is nothing to flush in what is only read.
        }

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();

        public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();

        protected override void Dispose(bool disposing)
        {
            base.Dispose(disposing);
            if (disposing)
            {
                end();
                inner.Dispose();
            }
        }
    }
}
