using Offcuts.Domain;
using Offcuts.Planning.Deciding;

namespace Offcuts.Planning.Mixing;

/// <summary>The builds of a mix, and what a copy of each counts.</summary>
internal sealed class MixBuilds
{
    private readonly PlanningProblem shop;
    private readonly IReadOnlyList<string> names;
    private readonly Design[] each;

    public MixBuilds(MixQuestion question)
    {
        shop = Spending.OfWood(question.Problem) with { Offers = [], Builds = [], Earlier = null };
        names = question.Problem.Builds;
        each = [.. names.Select(build => JointDesign.Only(question.Problem.Design, build))];
        Least = [.. question.Ranges.Select(range => range.Least)];
        Most = [.. question.Ranges.Zip(each).Select(pair => Math.Min(pair.First.Most, DesignCopies.Most(pair.Second, shop.Stock)))];
        var there = shop.Stock.Select(board => board.Species).ToHashSet(StringComparer.Ordinal);
        Ranks = [.. each.Select(design => RankOf(design, there))];
    }

    /// <summary>How many designs there are.</summary>
    public int Count => each.Length;

    /// <summary>Fewest copies of each.</summary>
    public IReadOnlyList<int> Least { get; }

    /// <summary>Most copies of each: what is asked for, and what there is wood for by volume.</summary>
    public IReadOnlyList<int> Most { get; }

    /// <summary>What one copy of each counts.</summary>
    public IReadOnlyList<MixRank> Ranks { get; }

    /// <summary>What so many copies count.</summary>
    public MixRank RankOf(IReadOnlyList<int> counts) =>
        Ranks.Zip(counts).Aggregate(default(MixRank), (sum, pair) => new(sum.Wood + (pair.First.Wood * pair.Second), sum.Pieces + (pair.First.Pieces * pair.Second)));

    /// <summary>The problem of building so many copies of each from stock alone.</summary>
    public PlanningProblem At(IReadOnlyList<int> counts)
    {
        var copies = each.Zip(counts).Where(pair => pair.Second > 0).Select(pair => DesignCopies.Of(pair.First, pair.Second)).ToList();
        return shop with
        {
            Design = new Design
            {
                Name = "Mix",
                Parts = [.. copies.SelectMany(design => design.Parts)],
                Panels = [.. copies.SelectMany(design => design.Panels)],
                Groups = [.. copies.SelectMany(design => design.Groups)],
                Items = [.. copies.SelectMany(design => design.Items)],
            },
        };
    }

    /// <summary>Which design a part or panel of the joint design is of.</summary>
    public int OfName(string name) => names.Index().First(build => JointDesign.IsOf(name, build.Item)).Index;

    /// <summary>The finished wood at the least rate among the species that there are, so that a mix never counts for more than it has.</summary>
    private MixRank RankOf(Design design, HashSet<string> there)
    {
        var members = design.Parts.Select(part => (part.Quantity, part.Finished, part.Species)).Concat(design.Panels.Select(panel => (panel.Quantity, panel.Finished, panel.Species)));
        return members.Aggregate(default(MixRank), (sum, member) =>
            new(sum.Wood + (member.Quantity * Volume(member.Finished) * Rate(member.Species)), sum.Pieces + member.Quantity));

        static Int128 Volume(Dimensions size) => (Int128)size.Thickness.Ticks * size.Width.Ticks * size.Length.Ticks;

        long Rate(IReadOnlyList<string> species)
        {
            var open = species.Where(there.Contains).ToList();
            return (open.Count > 0 ? open : species).Select(one => shop.Rates.Of(one).MinorUnits).DefaultIfEmpty(0).Min();
        }
    }
}
