using Offcuts.Domain;

namespace Offcuts.Testing;

/// <summary>Random keep rules, by dice of their own: the shops themselves stay as they are.</summary>
public static class RandomKeepRules
{
    private static readonly string[] Species = ["white-ash", "black-cherry", "black-walnut", "birch-plywood"];

    /// <summary>The problem with a rule of what is kept.</summary>
    public static PlanningProblem Apply(PlanningProblem problem, int seed, bool metric) =>
        problem with { Shop = problem.Shop with { KeepRule = Create(seed, metric) } };

    /// <summary>The rule of a seed, of one to five entries.</summary>
    public static KeepRule Create(int seed, bool metric)
    {
        var dice = new Dice(seed ^ 0x0DDC, metric);
        return new([.. Enumerable.Range(0, dice.From(1, 5)).Select(_ => Entry(dice))]);
    }

    private static KeepEntry Entry(Dice dice)
    {
        var word = dice.Pick(Enum.GetValues<KeepWord>());
        List<string>? species = dice.Chance(2) ? null : [.. Enumerable.Range(0, dice.From(1, 2)).Select(_ => dice.Pick(Species)).Distinct()];
        var sizes = dice.From(word == KeepWord.Keep || species is null ? 1 : 0, 3);
        return new(word, species, [.. Enumerable.Range(0, sizes).Select(_ => Size(dice))]);
    }

    private static KeepSize Size(Dice dice)
    {
        var size = new KeepSize(
            dice.Chance(3) ? null : dice.Between(2, 30), dice.Chance(3) ? null : dice.Between(1, 8), dice.Chance(3) ? dice.Size(0.75m, 19) : null,
            dice.Chance(4) ? dice.Between(1, 3) * dice.Between(1, 3) : null);
        return size == default ? new KeepSize(Length: dice.Size(12, 300)) : size;
    }
}
