using System.Text.Json;
using System.Text.Json.Serialization;
using Offcuts.Domain;
using Offcuts.Testing;
using Xunit;

namespace Offcuts.Planning.Tests;

/// <summary>The same input and seed give the same plan, to the last saw cut, when the search ends before its time does.</summary>
public sealed class DeterminismTests
{
    private static readonly JsonSerializerOptions AllMembers = new() { Converters = { new AsItIs<Piece>(), new AsItIs<OfferForm>() } };

    [Theory]
    [InlineData(ShopScale.Smallest, 50, 20)]
    [InlineData(ShopScale.Tiny, 12, 4)]
    public void The_same_seed_gives_the_same_plan(ShopScale scale, int shops, int least)
    {
        var compared = 0;
        foreach (var seed in Enumerable.Range(7000, shops))
        {
            // Two problems with equal contents, so that nothing can hang on the identity of objects.
            if (Solve(seed, scale) is { Run.Finished: true } one && Solve(seed, scale) is { Run.Finished: true } other)
            {
                compared++;
                Assert.True(Say(one) == Say(other), $"seed {seed}:\n{Say(one)}\n{Say(other)}");
            }
        }

        Assert.True(compared >= least, $"Only {compared} searches ended before their time.");
    }

    [Fact]
    public void What_is_compared_holds_every_piece_and_purchase()
    {
        var plan = Enumerable.Range(7000, 50).Select(seed => Solve(seed, ShopScale.Smallest)).First(plan => plan.Purchases.Count > 0);
        var piece = plan.Boards[0].Pieces.OfType<PartPiece>().First();
        Assert.Contains($"\"Part\":\"{piece.Part}\"", Say(plan), StringComparison.Ordinal);
        Assert.Contains($"\"Id\":\"{plan.Purchases[0].Offer.Offer.Id}\"", Say(plan), StringComparison.Ordinal);
    }

    private static Plan Solve(int seed, ShopScale scale) =>
        Planner.Solve(RandomShops.Create(seed, RandomShops.Kind(seed, scale)), new PlanLimits(TimeSpan.FromSeconds(2), Seed: 11));

    private static string Say(Plan plan) =>
        JsonSerializer.Serialize(plan with { Run = plan.Run with { Elapsed = default, FirstPlanAfter = default } }, AllMembers);

    /// <summary>Writes all members of what a value really is, not only those of the type that it is declared as.</summary>
    private sealed class AsItIs<T> : JsonConverter<T>
        where T : notnull
    {
        public override T Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => throw new NotSupportedException();

        public override void Write(Utf8JsonWriter writer, T value, JsonSerializerOptions options) => JsonSerializer.Serialize(writer, value, value.GetType(), options);
    }
}
