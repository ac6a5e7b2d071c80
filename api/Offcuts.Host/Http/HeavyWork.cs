namespace Offcuts.Host.Http;

/// <summary>How much an endpoint asks of the processors while its client waits.</summary>
internal enum HeavyKind
{
    /// <summary>A search that takes all processors for as long as its budget lets it: rankings, stretches, what would be worth having.</summary>
    Search,

    /// <summary>A look at all boards or designs, mostly well under a second.</summary>
    Look,
}

/// <summary>
/// How many requests that keep the processors busy are answered at once. Searches have their turn one at a time beside the plan runs, of which
/// <see cref="Plans.PlanRunner"/> makes one at a time as well; of looks there are as many as processors. A request waits for its turn for a moment, and is then
/// refused: the same answer for all, and for runs beyond <see cref="HostSettings.PlanQueueLength"/>.
/// </summary>
internal sealed class HeavyWork(HostSettings settings) : IDisposable
{
    private const int ComeBackSeconds = 5;

    private readonly SemaphoreSlim searches = new(1);
    private readonly SemaphoreSlim looks = new(Environment.ProcessorCount);

    /// <summary>Takes the turn, which ends with what is given.</summary>
    /// <exception cref="RefusedException">It did not come to its turn in time.</exception>
    public async Task<IDisposable> EnterAsync(HeavyKind kind, CancellationToken cancellationToken)
    {
        var free = kind == HeavyKind.Search ? searches : looks;
        return await free.WaitAsync(settings.HeavyPatience, cancellationToken) ? new Turn(free) : throw TooMany("Other requests keep the service busy");
    }

    /// <summary>The answer to what is too much.</summary>
    /// <param name="why">What there is too much of, without a full stop.</param>
    public static RefusedException TooMany(string why) => new(
        StatusCodes.Status429TooManyRequests, FormattableString.Invariant($"{why}: try again in {ComeBackSeconds} seconds."), ComeBackSeconds);

    public void Dispose()
    {
        searches.Dispose();
        looks.Dispose();
    }

    private sealed class Turn(SemaphoreSlim free) : IDisposable
    {
        public void Dispose() => free.Release();
    }
}

/// <summary>Lets the requests of endpoints that say so have their turns.</summary>
internal static class HeavyEndpoints
{
    /// <summary>The endpoint is answered in its turn.</summary>
    public static void IsHeavy(this IEndpointConventionBuilder endpoint, HeavyKind kind) => endpoint.WithMetadata(new Mark(kind));

    /// <summary>Between routing and the endpoints. A turn lasts until the answer has ended, also that of a stream.</summary>
    public static void UseHeavyWork(this IApplicationBuilder app)
    {
        var work = app.ApplicationServices.GetRequiredService<HeavyWork>();
        app.Use((context, next) => context.GetEndpoint()?.Metadata.GetMetadata<Mark>() is { } mark ? InTurnAsync(context, next, work, mark.Kind) : next(context));
    }

    private static async Task InTurnAsync(HttpContext context, RequestDelegate next, HeavyWork work, HeavyKind kind)
    {
        using var turn = await work.EnterAsync(kind, context.RequestAborted);
        await next(context);
    }

    private sealed record Mark(HeavyKind Kind);
}
