using Offcuts.Host.Shops;
using Offcuts.Storage;

namespace Offcuts.Host.Builds;

/// <summary>Gives boards back that plans have held for longer than the shop lets them: whenever someone looks, not by a clock of its own.</summary>
internal sealed class Expiry(BuildStore builds, Workshop workshop)
{
    public void Run()
    {
        // Most shops set no limit, and most lists are read while nothing is held.
        if (builds.HoldsAny() && workshop.Shop().HoldDays is { } days)
        {
            builds.Expire(TimeSpan.FromDays(days));
        }
    }
}
