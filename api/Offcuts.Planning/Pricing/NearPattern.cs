using Offcuts.Planning.Modelling;

namespace Offcuts.Planning.Pricing;

/// <summary>How many pieces of every row something makes, at most as many as are needed.</summary>
internal sealed record Made(int[] Counts)
{
    private string? key;

    /// <summary>What makes the same has the same key.</summary>
    public string Key => key ??= string.Create(Counts.Length, Counts, (signs, counts) =>
    {
        for (var row = 0; row < counts.Length; row++)
        {
            signs[row] = (char)counts[row];
        }
    });

    /// <summary>All pieces together.</summary>
    public int Total => total ??= Counts.Sum();

    private int? total;
    private ulong? signature;

    /// <summary>A bit for every row that it makes a piece of, rows sharing bits: what makes something else besides has a bit that the other lacks, mostly.</summary>
    private ulong Signature
    {
        get
        {
            if (signature is null)
            {
                var bits = 0UL;
                for (var row = 0; row < Counts.Length; row++)
                {
                    bits |= Counts[row] > 0 ? 1UL << (row & 63) : 0;
                }

                signature = bits;
            }

            return signature.Value;
        }
    }

    public static Made Nothing(int rows) => new(new int[rows]);

    public bool Covers(Made other)
    {
        if ((other.Signature & ~Signature) != 0)
        {
            return false;
        }

        for (var row = 0; row < Counts.Length; row++)
        {
            if (Counts[row] < other.Counts[row])
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Those that make something that none of the others makes as well; not all of them where the effort is spent.</summary>
    public static List<T> Undominated<T>(IEnumerable<T> all, Func<T, Made> made, ListingEffort effort)
    {
        var kept = new List<T>();
        foreach (var one in all.OrderByDescending(each => made(each).Total).ThenBy(each => made(each).Key, StringComparer.Ordinal))
        {
            if (!effort.SpendInTime(1 + (kept.Count / 8)))
            {
                break;
            }

            if (!kept.Exists(other => made(other).Covers(made(one))))
            {
                kept.Add(one);
            }
        }

        return kept;
    }

    /// <summary>Both together, within the need.</summary>
    public Made And(Made other, long[] need)
    {
        var counts = new int[Counts.Length];
        for (var row = 0; row < counts.Length; row++)
        {
            counts[row] = (int)Math.Min(Math.Max(0, need[row]), Counts[row] + other.Counts[row]);
        }

        return new Made(counts);
    }
}

/// <summary>Something that takes room and makes pieces: a blank in a run, a run in a section, a section in a board.</summary>
/// <param name="Size">Room that it takes, in cells.</param>
/// <param name="Made">What it makes.</param>
/// <param name="Tag">The blank at its head: the leader of a section, the widest of a run.</param>
/// <param name="Inside">What it consists of beside that blank; null for a blank.</param>
internal sealed record NearItem(int Size, Made Made, int Tag, NearChoice? Inside);

/// <summary>A choice of items, as a list from the last to the first.</summary>
/// <param name="Made">What all of them make together.</param>
/// <param name="Value">What that is worth.</param>
/// <param name="Used">Room that they take, in cells.</param>
/// <param name="Last">The item added last; null for the empty choice.</param>
/// <param name="Before">The choice before it.</param>
internal sealed record NearChoice(Made Made, double Value, int Used, NearItem? Last, NearChoice? Before)
{
    /// <summary>The items chosen.</summary>
    public IEnumerable<NearItem> Items()
    {
        for (var at = this; at?.Last is { } item; at = at.Before)
        {
            yield return item;
        }
    }
}

/// <summary>A way to cut a board or an area of one.</summary>
/// <param name="Made">What it makes.</param>
/// <param name="Value">What that is worth.</param>
/// <param name="Pattern">How it is cut.</param>
internal sealed record NearArea(Made Made, double Value, AreaPattern Pattern);
