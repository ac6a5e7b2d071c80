using Offcuts.Domain;

namespace Offcuts.Auditing.Members;

/// <summary>
/// The reason for which a part or panel is missing must hold for every board and offer: none comes further than the reason says, and for
/// "too few" some would do but no offer without limit. Where one species is asked for throughout, it must hold for the species of the rest
/// of the group; if there is no rest, for one that the part accepts; and likewise for batches. Boards with defects are left out: how much of them a planner uses is its own choice.
/// </summary>
internal static class MissingReasons
{
    public static void Check(AuditScope scope)
    {
        foreach (var missing in scope.Plan.Missing)
        {
            if (scope.Parts.TryGetValue(missing.Name, out var part))
            {
                Check(scope, missing, part.Group, Alternatives(scope, part.Species, part.Group, agrees: part.Layers > 1), (source, species) => OfPart(scope.Problem.Shop, part, species, source));
            }
            else if (scope.Panels.TryGetValue(missing.Name, out var panel))
            {
                Check(scope, missing, panel.Group, Alternatives(scope, panel.Species, panel.Group, agrees: true), (source, species) => OfPanel(scope.Problem.Shop, panel, species, source));
            }

            scope.Findings.Require(
                missing.Closest is not { } id || scope.Stock.ContainsKey(id) || scope.Offers.ContainsKey(id),
                AuditRule.MissingReason, $"{missing.Name}: there is no board and no offer {missing.Closest}.");
        }
    }

    private static void Check(
        AuditScope scope, MissingPart missing, string? group, List<IReadOnlyList<string>> alternatives, Func<Source, IReadOnlyList<string>, MissingReason> reasonOf)
    {
        var sources = Source.Of(scope.Problem).ToList();
        scope.Findings.Require(
            Batches(scope, group).Exists(batch => alternatives.Exists(species =>
                Holds(missing.Reason, sources, source => InBatch(source, batch, reasonOf(source, species))))),
            AuditRule.MissingReason, $"{missing.Name} is said to be missing because of {missing.Reason}, which is not so.");
    }

    private static MissingReason InBatch(Source source, OneBatch.Origin? batch, MissingReason reason) =>
        batch is null || batch == source.Batch || reason == MissingReason.NoSuchSpecies ? reason : MissingReason.NotOfOneBatch;

    /// <summary>The batches that may have been tried: that of the rest of the group, else every one, and one that nothing is of; null where none is asked for.</summary>
    private static List<OneBatch.Origin?> Batches(AuditScope scope, string? group)
    {
        if (group is null || !scope.Problem.Design.Groups.Any(known => known.Name == group && known.Batch == BatchChoice.One))
        {
            return [null];
        }

        var made = OneBatch.OfGroup(scope, group);
        return made.Count > 0 ? [.. made] : [.. OneBatch.All(scope.Problem), new OneBatch.Origin("", "")];
    }

    private static bool Holds(MissingReason reason, List<Source> sources, Func<Source, MissingReason> reasonOf)
    {
        var ways = sources.Where(source => source.IsClear).Select(source => (source.IsUnlimited, Reason: reasonOf(source))).ToList();
        return reason == MissingReason.TooFew
            ? !ways.Exists(way => way is { Reason: MissingReason.TooFew, IsUnlimited: true })
                && (ways.Exists(way => way.Reason == MissingReason.TooFew) || sources.Exists(source => !source.IsClear))
            : !ways.Exists(way => Rank(way.Reason) > Rank(reason));
    }

    /// <summary>The sets of species that may have been tried.</summary>
    private static List<IReadOnlyList<string>> Alternatives(AuditScope scope, IReadOnlyList<string> accepted, string? group, bool agrees)
    {
        var oneSpecies = group is not null && scope.Problem.Design.Groups.Any(known => known.Name == group && (known.OneSpecies || known.Batch == BatchChoice.One));
        var made = oneSpecies ? OneSpecies.SpeciesOfGroup(scope, group!) : [];
        return made.Count > 0 ? [[.. made.Intersect(accepted, StringComparer.Ordinal)]]
            : oneSpecies || agrees ? [accepted, .. accepted.Select(species => new[] { species })]
            : [accepted];
    }

    // A piece that is too long one way and too wide the other may be called either.
    private static int Rank(MissingReason reason) => reason == MissingReason.TooNarrow ? (int)MissingReason.TooShort : (int)reason;

    // Of the ways to make it, in one piece or in layers, the one that comes furthest.
    private static MissingReason OfPart(Shop shop, Part part, IReadOnlyList<string> species, Source source) => Enumerable.Range(1, part.Layers)
        .Select(layers => OfBlank(shop, part, layers, species, source)).MaxBy(Rank);

    private static MissingReason OfBlank(Shop shop, Part part, int layers, IReadOnlyList<string> species, Source source)
    {
        var allowances = Milling.Allowances(shop, source.Kind, source.Surface);
        var along = part.Finished.Length + allowances.Length;
        var across = part.Finished.Width + allowances.Width;
        var asked = layers == 1 ? new Asked(part) : new Asked(part).InLayers(layers);
        if (layers > 1 && across > shop.PlanerWidth)
        {
            // Whatever comes further than the machines, it is glued up too wide for the planer.
            var first = source.Refuses(shop, asked, species, along, across, turned: false);
            return Rank(first) < Rank(MissingReason.TooWideForMachines) ? first : MissingReason.TooWideForMachines;
        }

        var safe = shop.ShortBlanks != ShortBlanks.Refuse ? Length.Zero
            : Milling.ShortestBlank(shop, source.Kind, source.Surface, source.Size.Thickness, asked.Thickness, asked.MostThickness, source.Warp.IsFlat);
        var upright = source.Refuses(shop, asked, species, Length.Larger(along, safe), across, turned: false);
        if (part.Grain != Grain.Free || across < safe)
        {
            return upright;
        }

        var turned = source.Refuses(shop, asked, species, across, along, turned: true);
        return turned > upright ? turned : upright;
    }

    private static MissingReason OfPanel(Shop shop, Panel panel, IReadOnlyList<string> species, Source source)
    {
        if (source.Kind == BoardKind.Sheet)
        {
            return MissingReason.NoSuchSpecies;
        }

        var allowances = Milling.Allowances(shop, source.Kind, source.Surface);
        var narrowest = (panel.NarrowestStrip ?? shop.NarrowestStrip) + allowances.Width;
        return GlueUpLists.SubPanels(shop, panel) is null
            ? MissingReason.TooWideForMachines
            : source.Refuses(
                shop, new Asked(panel), species,
                Strips.LengthOf(shop, panel, source.Kind, source.Surface, source.Size.Thickness, source.Warp.IsFlat), narrowest, turned: false);
    }
}
