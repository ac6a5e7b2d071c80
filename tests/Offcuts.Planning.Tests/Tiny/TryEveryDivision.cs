namespace Offcuts.Planning.Tests.Tiny;

/// <summary>
/// Whether a board with defects gives a set of pieces: every way to saw it along the edges of its defects, and every way to share the pieces among
/// what that leaves. A cut before a defect begins where the defect does; one behind it ends where it does.
/// </summary>
/// <param name="tiny">The case.</param>
/// <param name="defects">The board's defects.</param>
/// <param name="fits">Whether a clear rectangle gives a set.</param>
internal sealed class TryEveryDivision(TinyCase tiny, IReadOnlyList<TinyDefect> defects, Func<int, int, int, bool> fits)
{
    private readonly Dictionary<(Span Along, Span Across, int Set), bool> known = [];

    private readonly record struct Span(int From, int To)
    {
        public bool Meets(int from, int to) => from < To && to > From;

        /// <summary>What is left on both sides of a cut along either edge of a defect.</summary>
        public IEnumerable<(Span Before, Span Behind)> Sawn(int low, int high, int kerf)
        {
            if (low > From && low < To)
            {
                yield return (this with { To = low }, this with { From = Math.Min(To, low + kerf) });
            }

            if (high > From && high < To)
            {
                yield return (this with { To = Math.Max(From, high - kerf) }, this with { From = high });
            }
        }
    }

    public bool Gives(int length, int width, int set) => Gives(new Span(0, length), new Span(0, width), set);

    private bool Gives(Span along, Span across, int set)
    {
        if (set == 0 || along.To <= along.From || across.To <= across.From)
        {
            return set == 0;
        }

        if (!known.TryGetValue((along, across, set), out var gives))
        {
            known[(along, across, set)] = gives = GivesAnew(along, across, set);
        }

        return gives;
    }

    private bool GivesAnew(Span along, Span across, int set)
    {
        var inside = defects.Where(defect => along.Meets(defect.X, defect.X + defect.Length) && across.Meets(defect.Y, defect.Y + defect.Width)).ToList();
        var mayHold = inside.All(defect => defect.IsKnot) && tiny.Pieces.Index().All(piece => (set >> piece.Index & 1) == 0 || piece.Item.IsTolerant);
        return ((inside.Count == 0 || mayHold) && fits(set, along.To - along.From, across.To - across.From))
            || inside.Exists(defect =>
                along.Sawn(defect.X, defect.X + defect.Length, tiny.Kerf).Any(cut => Shared(set, part => Gives(cut.Before, across, part), rest => Gives(cut.Behind, across, rest)))
                || across.Sawn(defect.Y, defect.Y + defect.Width, tiny.Kerf).Any(cut => Shared(set, part => Gives(along, cut.Before, part), rest => Gives(along, cut.Behind, rest))));
    }

    private static bool Shared(int set, Func<int, bool> before, Func<int, bool> behind)
    {
        for (var part = set; ; part = (part - 1) & set)
        {
            if (before(part) && behind(set ^ part))
            {
                return true;
            }

            if (part == 0)
            {
                return false;
            }
        }
    }
}
