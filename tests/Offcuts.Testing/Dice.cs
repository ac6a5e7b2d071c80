using Offcuts.Domain;

namespace Offcuts.Testing;

/// <summary>Seeded random choices of the sizes that people write: quarters of an inch or whole millimetres.</summary>
public sealed class Dice(int seed, bool metric)
{
    private readonly Random random = new(seed);

    public int From(int least, int most) => random.Next(least, most + 1);

    /// <summary>True once in so many times.</summary>
    public bool Chance(int oneIn) => random.Next(oneIn) == 0;

    public T Pick<T>(IReadOnlyList<T> all) => all[random.Next(all.Count)];

    /// <summary>A size in the shop's unit.</summary>
    public Length Size(decimal inches, decimal millimetres) =>
        metric ? Length.FromMillimetres(millimetres) : Length.FromSixtyFourths((long)(inches * 64));

    /// <summary>A random size in quarters of an inch, or in steps of 6 mm that are about as large.</summary>
    public Length Between(int leastInches, int mostInches)
    {
        var quarters = From(leastInches * 4, mostInches * 4);
        return metric ? Length.FromMillimetres(quarters * 6) : Length.FromInches(0, quarters * 16, 64);
    }
}
