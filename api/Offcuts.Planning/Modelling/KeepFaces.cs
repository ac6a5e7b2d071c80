using Offcuts.Domain;

namespace Offcuts.Planning.Modelling;

/// <summary>The extents, in ticks, from which a piece of one species and thickness is kept: of at least one of them both are reached.</summary>
internal sealed class KeepFaces
{
    private readonly (long Along, long Across)[] least;

    /// <param name="kept">What is kept of the species.</param>
    /// <param name="thickness">The thickness.</param>
    public KeepFaces(KeepSizes kept, Length thickness)
    {
        // A section asks for a width once the thickness is known.
        var all = kept.Least.Where(size => thickness >= size.Thickness).Select(size => (
            Along: size.Length!.Value.Ticks,
            Across: Math.Max(size.Width!.Value.Ticks, size.Section is { } section ? (section.SquareTicks + thickness.Ticks - 1) / thickness.Ticks : 0))).Distinct().ToList();
        least = [.. all.Where(face => !all.Exists(other => other != face && other.Along <= face.Along && other.Across <= face.Across))];
    }

    /// <summary>The extents across the board at which pieces begin to be kept.</summary>
    public IEnumerable<long> Across => least.Select(face => face.Across);

    /// <summary>Whether a piece of such extents is kept.</summary>
    public bool Include(long along, long across)
    {
        foreach (var face in least)
        {
            if (along >= face.Along && across >= face.Across)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Whether a piece is kept.</summary>
    public bool Include(Rect piece) => Include(piece.Length.Ticks, piece.Width.Ticks);

    /// <summary>By how much waste can become larger in one direction before it is kept; no limit is more than any board has.</summary>
    public long RoomOfWaste(FirstCut axis, long along, long across)
    {
        var room = long.MaxValue / 4;
        foreach (var face in least)
        {
            var (own, other, leastOwn, leastOther) = axis == FirstCut.Crosscut ? (along, across, face.Along, face.Across) : (across, along, face.Across, face.Along);
            room = other < leastOther ? room : Math.Min(room, Math.Max(0, leastOwn - 1 - own));
        }

        return room;
    }
}
