using CsCheck;

namespace Offcuts.Host.Tests.Builds;

// Random days of a shop against a small model of it, over HTTP and a real database, with restarts between.
public sealed class ModelTests
{
    private const int Days = 10;

    [Fact]
    public async Task Any_sequence_of_changes_leaves_the_stock_that_a_small_model_expects() =>
        await Gen.Int[0, 1_000_000].Array[15, 35].SampleAsync(LiveAsync, iter: Days, threads: 1);

    private static async Task LiveAsync(int[] choices)
    {
        var service = new Service();
        await service.InitializeAsync();
        try
        {
            var day = new ModelDay(service);
            // Without stock and plans nothing can happen.
            foreach (var choice in (int[])[0, 21, 4, 7, .. choices])
            {
                await day.DoAsync(choice);
                await day.CompareAsync();
            }
        }
        finally
        {
            await service.DisposeAsync();
        }
    }
}
