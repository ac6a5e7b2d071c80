using System.Net;
using System.Net.Http.Headers;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.Extensions.Primitives;

namespace Offcuts.Host.InProcess;

/// <summary>Hands the requests of an <see cref="HttpClient"/> to an application in the same process.</summary>
/// <param name="answer">The application.</param>
/// <param name="scopes">Makes the services of one request.</param>
/// <param name="streams">The answers that are read while they are written.</param>
internal sealed class InProcessHandler(RequestDelegate answer, IServiceScopeFactory scopes, OpenStreams streams) : HttpMessageHandler
{
    /// <inheritdoc/>
    protected override async Task<HttpResponseMessage> SendAsync(HttpRequestMessage request, CancellationToken cancellationToken)
    {
        cancellationToken.ThrowIfCancellationRequested();
        byte[] body = request.Content is { } content ? await content.ReadAsByteArrayAsync(cancellationToken) : [];
        var response = new InProcessResponse();
        var aborted = CancellationTokenSource.CreateLinkedTokenSource(cancellationToken, streams.Stopping);
        var features = new FeatureCollection();
        features.Set<IHttpRequestFeature>(FeatureOf(request, body));
        features.Set<IHttpRequestLifetimeFeature>(new HttpRequestLifetimeFeature { RequestAborted = aborted.Token });
        features.Set<IHttpResponseFeature>(response);
        features.Set<IHttpResponseBodyFeature>(response.BodyFeature);
        var answering = AnswerAsync(new DefaultHttpContext(features) { ServiceScopeFactory = scopes }, response);
        if (await Task.WhenAny(answering, response.BodyFeature.Streaming) != answering)
        {
            streams.Add(answering);
            await response.StartAsync();
            return MessageOf(request, response, new StreamedContent(response.BodyFeature.Reader, aborted.Cancel));
        }

        using (aborted)
        using (response)
        {
            try
            {
                await answering;
            }
            catch (Exception) when (cancellationToken.IsCancellationRequested)
            {
                // As a connection that was cut: whatever the application threw, the client asked to stop.
                throw new OperationCanceledException(cancellationToken);
            }

            return MessageOf(request, response, request.Method == HttpMethod.Head ? new ByteArrayContent([]) : response.Content());
        }
    }

    private async Task AnswerAsync(HttpContext context, InProcessResponse response)
    {
        try
        {
            await answer(context);
            await response.EndAsync();
        }
        catch (Exception fault)
        {
            // Who reads it already is told there; who still waits for it, by the task.
            await response.BodyFeature.FailAsync(fault);
            throw;
        }
    }

    private static HttpRequestFeature FeatureOf(HttpRequestMessage request, byte[] body)
    {
        var address = request.RequestUri!;
        var feature = new HttpRequestFeature
        {
            Method = request.Method.Method,
            Scheme = address.Scheme,
            Protocol = HttpProtocol.Http11,
            RawTarget = address.PathAndQuery,
            // As Kestrel does: an escaped slash stays escaped, so that it parts no segments.
            Path = Uri.UnescapeDataString(address.AbsolutePath.Replace("%2F", "%252F", StringComparison.OrdinalIgnoreCase)),
            QueryString = address.Query,
            Body = new MemoryStream(body, writable: false),
        };
        Copy(request.Headers, feature.Headers);
        feature.Headers.Host = request.Headers.Host ?? address.Authority;
        if (request.Content is { } content)
        {
            Copy(content.Headers, feature.Headers);
            feature.Headers.ContentLength = body.Length;
        }

        return feature;
    }

    private static void Copy(HttpHeaders from, IHeaderDictionary to)
    {
        foreach (var (name, values) in from.NonValidated)
        {
            to[name] = new StringValues([.. values]);
        }
    }

    private static HttpResponseMessage MessageOf(HttpRequestMessage request, InProcessResponse response, HttpContent content)
    {
        var message = new HttpResponseMessage((HttpStatusCode)response.StatusCode) { RequestMessage = request, Content = content };
        foreach (var (name, values) in response.Headers)
        {
            if (!message.Headers.TryAddWithoutValidation(name, (IEnumerable<string?>)values))
            {
                content.Headers.TryAddWithoutValidation(name, (IEnumerable<string?>)values);
            }
        }

        return message;
    }
}
