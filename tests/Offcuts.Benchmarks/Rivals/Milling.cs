using Offcuts.Domain;

namespace Offcuts.Benchmarks.Rivals;

/// <summary>Rules 1 to 3 of the cutting rules for the rivals.</summary>
internal static class Milling
{
    /// <summary>What milling takes from a board.</summary>
    public static Allowances Allowances(Shop shop, Source source) =>
        source.Kind == BoardKind.Sheet ? shop.Sheet : source.Surface == Surface.Rough ? shop.Rough : shop.Surfaced;

    /// <summary>The widest blank that the board may give for a job: null if it cannot serve at all.</summary>
    public static Length? Widest(Shop shop, Source source, Job job)
    {
        var thickness = source.Size.Thickness;
        var asItIs = source.Kind == BoardKind.Sheet || source.Surface == Surface.Surfaced;
        if (!job.Species.Contains(source.Species) || source.Appearance > job.Appearance || (job is StripJob && source.Kind == BoardKind.Sheet))
        {
            return null;
        }

        if (asItIs && thickness == job.Finished.Thickness)
        {
            return Length.Max;
        }

        return source.Kind == BoardKind.Sheet || thickness < job.Finished.Thickness + Allowances(shop, source).Thickness ? null
            : source.Surface == Surface.Rough ? Length.Min(shop.JointerWidth, shop.PlanerWidth)
            : shop.PlanerWidth;
    }

    /// <summary>How many sub-panels a panel takes and how wide each is.</summary>
    /// <exception cref="InvalidOperationException">The planer is too narrow for any number of them.</exception>
    public static (int Count, Length Width) SubPanels(Shop shop, Panel panel)
    {
        var glued = (panel.Finished.Width + shop.PanelOversize).Ticks;
        for (var count = 1; count <= 1000; count++)
        {
            var width = (glued + ((count - 1) * shop.SeamAllowance.Ticks) + count - 1) / count;
            if (width <= shop.PlanerWidth.Ticks)
            {
                return (count, Length.FromTicks(width));
            }
        }

        throw new InvalidOperationException($"No number of sub-panels of {panel.Name} passes the planer.");
    }

    /// <summary>The places that a part's blank may take up on a board (along, across); none if the board cannot serve.</summary>
    public static IEnumerable<(Length Along, Length Across, bool Turned)> Blanks(Shop shop, Source source, PartJob job)
    {
        var allowances = Allowances(shop, source);
        var length = job.Finished.Length + allowances.Length;
        var width = job.Finished.Width + allowances.Width;
        if (Widest(shop, source, job) is not { } widest || width > widest)
        {
            yield break;
        }

        yield return (length, width, false);
        if (job.MayTurn)
        {
            yield return (width, length, true);
        }
    }
}
