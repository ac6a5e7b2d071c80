using Offcuts.Domain;
using Offcuts.Planning.Modelling;

namespace Offcuts.Planning.Explaining;

/// <summary>Finds out why no board and no offer gives a part: the source that comes furthest, and what stops it.</summary>
internal sealed class MissingReasons(PlanningProblem problem)
{
    private readonly Milling milling = new(problem.Shop);

    private readonly List<SourceOfWood> sources =
    [
        .. problem.Stock.Select(board => SourceOfWood.Of(board, new Trims(problem.Shop))),
        .. problem.Offers.Where(offer => offer.Available != 0).SelectMany(OfferSize.Of).Select(size => SourceOfWood.Of(size, new Trims(problem.Shop))),
    ];

    /// <summary>Why a part cannot be had from one of the species, of the batches that are named; null if one piece of it can.</summary>
    public MissingPart? OfPart(Part part, int quantity, IReadOnlyList<string> species, IReadOnlyList<string>? batches = null) =>
        Furthest(part.Name, quantity, source => OfBatch(species, batches, source) ?? OfPart(part, species, source));

    /// <summary>What stops one source from giving a part; nothing if it gives one.</summary>
    public IEnumerable<BoardLack> WhyNot(Part part, SourceOfWood source) =>
        OfPart(part, part.Species, source) is { } obstacle ? [new BoardLack(obstacle.Reason, obstacle.Needed, obstacle.Has)] : [];

    /// <summary>Why a panel cannot be had from one of the species, of the batches that are named; null if one strip of it can.</summary>
    public MissingPart? OfPanel(Panel panel, int quantity, IReadOnlyList<string> species, IReadOnlyList<string>? batches = null)
    {
        var (count, _) = milling.SubPanels(panel);
        return count == 0
            ? new MissingPart(panel.Name, quantity, MissingReason.TooWideForMachines, null, panel.Finished.Width, problem.Shop.PlanerWidth)
            : Furthest(panel.Name, quantity, source => OfBatch(species, batches, source) ?? OfPanel(panel, species, source));
    }

    private static Obstacle? OfBatch(IReadOnlyList<string> species, IReadOnlyList<string>? batches, SourceOfWood source) =>
        batches is null || batches.Contains(source.Class.Batch) || !species.Contains(source.Class.Species) ? null : new Obstacle(MissingReason.NotOfOneBatch, null, null);

    private MissingPart? Furthest(
        string name, int quantity, Func<SourceOfWood, Obstacle?> obstacleOf)
    {
        Obstacle? best = new(MissingReason.NoSuchSpecies, null, null);
        string? closest = null;
        foreach (var source in sources)
        {
            var obstacle = obstacleOf(source);
            if (obstacle is null)
            {
                return null;
            }

            if (obstacle.Value.Reason != MissingReason.NoSuchSpecies && obstacle.Value.IsFurtherThan(best.Value))
            {
                best = obstacle;
                closest = source.Id;
            }
        }

        return new MissingPart(name, quantity, best.Value.Reason, closest, best.Value.Needed, best.Value.Has);
    }

    /// <summary>Whether some board or offer gives one layer of a part that is glued up from so many.</summary>
    public bool GivesLayer(Part part, int layers) => sources.Exists(source => OfBlank(part, layers, part.Species, source) is null);

    /// <summary>What stops a source in the way that comes furthest: in one piece or in layers.</summary>
    private Obstacle? OfPart(Part part, IReadOnlyList<string> species, SourceOfWood source)
    {
        Obstacle? furthest = null;
        for (var layers = 1; layers <= part.Layers; layers++)
        {
            if (OfBlank(part, layers, species, source) is not { } obstacle)
            {
                return null;
            }

            furthest = furthest is { } known && !obstacle.IsFurtherThan(known) ? known : obstacle;
        }

        return furthest;
    }

    private Obstacle? OfBlank(Part part, int layers, IReadOnlyList<string> species, SourceOfWood source)
    {
        var (least, most) = new Recipe(1, 1, layers).PieceThickness(part);
        if (General(species, part.Appearance, least, most, source.Class, out var widest) is { } general)
        {
            return general;
        }

        var allowances = milling.Allowances(source.Class);
        var along = part.Finished.Length + allowances.Length;
        var across = part.Finished.Width + allowances.Width;
        widest = layers > 1 ? Length.Min(widest ?? problem.Shop.PlanerWidth, problem.Shop.PlanerWidth) : widest;
        if (widest is not null && across > widest)
        {
            return new Obstacle(MissingReason.TooWideForMachines, across, widest);
        }

        // Where short blanks are refused, a short part takes at least the safe length; turned it cannot be lengthened.
        var safe = problem.Shop.ShortBlanks == ShortBlanks.Refuse ? milling.SafeLength(source.Class, least, most) : Length.Zero;
        var upright = Lies(least, most, Length.Larger(along, safe), across, isTurned: false, source, part.Tolerates);
        if (upright is null || part.Grain != Grain.Free || across < safe)
        {
            return upright;
        }

        var turned = Lies(least, most, across, along, isTurned: true, source, part.Tolerates);
        return turned is null || turned.Value.IsFurtherThan(upright.Value) ? turned : upright;
    }

    /// <summary>What keeps a blank from lying on a board with so much along and across it: its size, or what its warp takes besides.</summary>
    private Obstacle? Lies(
        Length thickness, Length mostThickness, Length along, Length across, bool isTurned, SourceOfWood source, IReadOnlyList<string> tolerates)
    {
        if (Fit(along, across, source, tolerates) is { } obstacle)
        {
            return obstacle;
        }

        var wide = across + source.Class.Flattening.Crook(along);
        if (source.HasPlaceFor(along, wide, tolerates) && milling.Serves(source.Class, thickness, mostThickness, along, wide, isTurned ? along : wide))
        {
            return null;
        }

        var needed = thickness + milling.Allowances(source.Class).Thickness + source.Class.Flattening.Faces(along, wide);
        return needed > source.Class.Thickness && !Milling.IsUsedAsItIs(source.Class, thickness, mostThickness)
            ? new Obstacle(MissingReason.TooWarped, needed, source.Class.Thickness)
            : new Obstacle(MissingReason.TooWarped, null, null);
    }

    private Obstacle? OfPanel(Panel panel, IReadOnlyList<string> species, SourceOfWood source)
    {
        if (source.Class.Kind == BoardKind.Sheet)
        {
            return new Obstacle(MissingReason.NoSuchSpecies, null, null);
        }

        if (General(species, panel.Appearance, panel.Finished.Thickness, panel.Finished.Thickness, source.Class, out var widest) is { } general)
        {
            return general;
        }

        var allowances = milling.Allowances(source.Class);
        var narrowest = (panel.NarrowestStrip ?? problem.Shop.NarrowestStrip) + allowances.Width;
        if (widest is not null && narrowest > widest)
        {
            return new Obstacle(MissingReason.TooWideForMachines, narrowest, widest);
        }

        var length = milling.StripLength(source.Class, panel.Finished.Thickness, panel.Finished.Length);
        return Lies(panel.Finished.Thickness, panel.Finished.Thickness, length, narrowest, isTurned: false, source, panel.Tolerates);
    }

    private Obstacle? General(
        IReadOnlyList<string> species, Appearance appearance, Length thickness, Length mostThickness, BoardClass cls, out Length? widest)
    {
        widest = null;
        if (!species.Contains(cls.Species))
        {
            return new Obstacle(MissingReason.NoSuchSpecies, null, null);
        }

        if (cls.Appearance > appearance)
        {
            return new Obstacle(MissingReason.NotGoodEnough, null, null);
        }

        if (!milling.SuitsThickness(cls, thickness, mostThickness, out widest))
        {
            var needed = cls.Kind == BoardKind.Sheet ? thickness : thickness + milling.Allowances(cls).Thickness;
            return new Obstacle(MissingReason.WrongThickness, needed, cls.Thickness);
        }

        return null;
    }

    private static Obstacle? Fit(Length along, Length across, SourceOfWood source, IReadOnlyList<string> tolerates) =>
        source.HasPlaceFor(along, across, tolerates) ? null
        : along > source.Along ? new Obstacle(MissingReason.TooShort, along, source.Along)
        : new Obstacle(MissingReason.TooNarrow, across, source.Across);

    /// <summary>What stops a source: a later reason is further, and of the same reason the one that lacks least.</summary>
    private readonly record struct Obstacle(MissingReason Reason, Length? Needed, Length? Has)
    {
        public bool IsFurtherThan(Obstacle other) =>
            Reason > other.Reason || (Reason == other.Reason && Needed is not null && other.Needed is not null
                && Lack < other.Lack);

        private Length Lack => Length.FromTicks(Math.Abs((Needed!.Value - Has!.Value).Ticks));
    }
}
