namespace Offcuts.Domain;

/// <summary>What is to be minded about the boards of one panel: their batches and moisture readings.</summary>
public static class PanelMoisture
{
    /// <summary>How far the readings of one panel's boards may be apart, in points of moisture content (common practice: strips alike, at 6 to 8 %, before gluing).</summary>
    public const decimal MostApart = 2;

    /// <summary>What to warn of.</summary>
    /// <param name="boards">The boards of the panel, each with its batch (what is bought of one offer is one) and its reading.</param>
    /// <param name="today">The day of the plan.</param>
    /// <param name="readingDays">For how many days a reading counts.</param>
    public static IEnumerable<WarningKind> Warnings(IReadOnlyCollection<(string? Batch, MoistureReading? Reading)> boards, DateOnly today, int readingDays)
    {
        // Who names no batch at all does not keep track of them; the same with readings.
        if (boards.Any(board => board.Batch is not null) && boards.DistinctBy(board => board.Batch).Skip(1).Any())
        {
            yield return WarningKind.MixedBatches;
        }

        var readings = boards.Select(board => board.Reading).OfType<MoistureReading>().ToList();
        if (readings.Count == 0)
        {
            yield break;
        }

        if (readings.Count < boards.Count || readings.Exists(reading => reading.Age(today) > readingDays))
        {
            yield return WarningKind.StaleReadings;
        }

        if (readings.Max(reading => reading.Percent) - readings.Min(reading => reading.Percent) > MostApart)
        {
            yield return WarningKind.UnequalMoisture;
        }
    }
}
