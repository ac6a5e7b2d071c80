namespace Offcuts.Planning.Mixing;

/// <summary>What no mix exceeds: copies times what each takes at some prices of the parts is at most what the stock gives at these.</summary>
/// <param name="PerCopy">What a copy of each design takes.</param>
/// <param name="Room">What the stock gives.</param>
internal sealed record MixCut(IReadOnlyList<double> PerCopy, double Room)
{
    /// <summary>Sums of floating-point numbers are right to far more than this part of them.</summary>
    public const double Margin = 1e-9;

    /// <summary>The room, and what rounding might lack of it.</summary>
    public double Limit => Room + (Margin * (1 + Math.Abs(Room)));
}

/// <summary>The mixes with one choice of species for what must agree.</summary>
/// <param name="Most">Most copies of each; none of a design that lacks wood with this choice.</param>
/// <param name="Cut">What none of them exceeds.</param>
internal sealed record MixChoice(IReadOnlyList<int> Most, MixCut Cut);

/// <summary>The mixes that are not ruled out: those that fit a choice's cut and do not hold a mix that is excluded.</summary>
/// <param name="builds">The designs.</param>
/// <param name="choices">The choices; a mix need only fit one of them.</param>
/// <param name="mostSteps">With more steps the numbers of copies are too many to go through.</param>
internal sealed class MixRegion(MixBuilds builds, IReadOnlyList<MixChoice> choices, int mostSteps = MixRegion.MostSteps)
{
    private const int MostSteps = 500_000;
    private readonly List<int[]> excluded = [];
    private bool isCutShort;

    /// <summary>Rules out a mix and all that hold it: whoever can make more can make this.</summary>
    public void Exclude(int[] counts) => excluded.Add(counts);

    /// <summary>The best mix left above a rank; null if there is none.</summary>
    /// <param name="floor">What it must rank above.</param>
    /// <param name="isWhole">
    /// Whether all were gone through, now and before: what was excluded as merely the best that was met takes better ones with it that were not.
    /// </param>
    public int[]? Best(MixRank floor, out bool isWhole)
    {
        var (best, steps) = ((int[]?)null, 0);
        foreach (var choice in choices.Where(choice => choice.Most.Zip(builds.Least).All(pair => pair.First >= pair.Second)))
        {
            // Most wood for what it takes first: then the fractional rest bounds what may still come.
            int[] order = [.. Enumerable.Range(0, builds.Count).OrderByDescending(at => builds.Ranks[at].MinorUnits / Math.Max(choice.Cut.PerCopy[at], 1e-9)).ThenBy(at => at)];
            int[] counts = [.. builds.Least];
            Go(choice, order, counts, 0, choice.Cut.Limit - Enumerable.Range(0, builds.Count).Sum(at => choice.Cut.PerCopy[at] * counts[at]));
        }

        isCutShort |= steps >= mostSteps;
        isWhole = !isCutShort;
        return best;

        // Counts from depth on are the least; room is what is left beyond all counts.
        void Go(MixChoice choice, int[] order, int[] counts, int depth, double room)
        {
            if (++steps >= mostSteps || room < 0 || excluded.Exists(gone => gone.Zip(counts).All(pair => pair.Second >= pair.First)))
            {
                return;
            }

            var rank = builds.RankOf(counts);
            if (rank.CompareTo(floor) > 0)
            {
                (best, floor) = ((int[])counts.Clone(), rank);
            }

            if (depth == order.Length || IsHopeless(choice, order, depth, room, rank, floor))
            {
                return;
            }

            var (at, least) = (order[depth], builds.Least[order[depth]]);
            var each = choice.Cut.PerCopy[at];
            var most = each * (choice.Most[at] - least) <= room ? choice.Most[at] : least + (int)Math.Floor(room / each);
            for (var count = most; count >= least; count--)
            {
                counts[at] = count;
                Go(choice, order, counts, depth + 1, room - (each * (count - least)));
            }

            counts[at] = least;
        }
    }

    private bool IsHopeless(MixChoice choice, int[] order, int depth, double room, MixRank rank, MixRank floor)
    {
        var (wood, pieces) = (0.0, rank.Pieces);
        for (var n = depth; n < order.Length; n++)
        {
            var at = order[n];
            var (more, each) = (choice.Most[at] - builds.Least[at], choice.Cut.PerCopy[at]);
            var taken = each * more <= room ? more : room / each;
            (wood, pieces, room) = (wood + (taken * (double)builds.Ranks[at].Wood), pieces + (more * builds.Ranks[at].Pieces), room - (taken * each));
        }

        return new MixRank(rank.Wood + (Int128)Math.Ceiling(wood * (1 + MixCut.Margin)), pieces) <= floor;
    }
}
