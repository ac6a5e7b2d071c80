using Microsoft.AspNetCore.Http.Features;

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
internal sealed class HeavyWork(HostSettings settings, ServiceEnd service) : IDisposable
{
    private const int ComeBackSeconds = 5;

    private readonly SemaphoreSlim searches = new(1);
    private readonly SemaphoreSlim looks = new(Environment.ProcessorCount);
    private int waiting;

    /// <summary>How many requests wait for their turn.</summary>
    public int Waiting => waiting;

    /// <summary>
    /// Takes the turn of a request once it is read and known to be right: what is wrong is refused at once, and who sends slowly keeps nobody waiting. It lasts until the answer
    /// has ended, also that of a stream. Gives what ends the work: nobody waits for the answer any more, or the service stops.
    /// </summary>
    /// <exception cref="RefusedException">It did not come to its turn in time.</exception>
    public async Task<CancellationToken> EnterAsync(HeavyKind kind, HttpContext context)
    {
        var free = kind == HeavyKind.Search ? searches : looks;
        Interlocked.Increment(ref waiting);
        try
        {
            if (!await free.WaitAsync(settings.HeavyPatience, context.RequestAborted))
            {
                throw TooMany("Other requests keep the service busy");
            }
        }
        finally
        {
            Interlocked.Decrement(ref waiting);
        }

        return context.Features.GetRequiredFeature<HeavyTurn>().Begin(free, CancellationTokenSource.CreateLinkedTokenSource(context.RequestAborted, service.Stopping));
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
}

/// <summary>The turn of one request, if it has taken one.</summary>
internal sealed class HeavyTurn : IDisposable
{
    private SemaphoreSlim? taken;
    private CancellationTokenSource? end;

    /// <summary>Notes what is to be given back when the answer has ended.</summary>
    public CancellationToken Begin(SemaphoreSlim free, CancellationTokenSource ends)
    {
        (taken, end) = (free, ends);
        return ends.Token;
    }

    public void Dispose()
    {
        end?.Dispose();
        taken?.Release();
    }
}

/// <summary>Ends the turns of requests with their answers.</summary>
internal static class HeavyEndpoints
{
    /// <summary>Before the endpoints.</summary>
    public static void UseHeavyWork(this IApplicationBuilder app) => app.Use(async (context, next) =>
    {
        using var turn = new HeavyTurn();
        context.Features.Set(turn);
        await next(context);
    });
}
