namespace Offcuts.Planning.Pricing;

/// <summary>How much work a listing of patterns may be.</summary>
/// <param name="steps">Steps after which it is given up, whatever the machine: the outcome is the same everywhere.</param>
/// <param name="isTimeUp">Whether the time for it is over.</param>
internal sealed class ListingEffort(long steps, Func<bool> isTimeUp)
{
    private long left = steps;

    /// <summary>Whether the listing is given up.</summary>
    public bool IsSpent => left < 0;

    /// <summary>Whether time ended it.</summary>
    public bool IsCutShort { get; private set; }

    /// <summary>Takes steps off; says whether any are left.</summary>
    public bool Spend(long taken)
    {
        left -= taken;
        return left >= 0;
    }

    /// <summary>The same, and looks at the clock.</summary>
    public bool SpendInTime(long taken)
    {
        if (left >= 0 && isTimeUp())
        {
            IsCutShort = true;
            left = -1;
        }

        return Spend(taken);
    }
}
