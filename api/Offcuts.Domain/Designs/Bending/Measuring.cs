namespace Offcuts.Domain;

/// <summary>Puts what formulas give into one part, panel or item.</summary>
/// <param name="freedom">Its formulas.</param>
/// <param name="unit">The unit of bare numbers.</param>
/// <param name="values">The values of names.</param>
/// <param name="untold">Names without a value of which the reason is told elsewhere.</param>
/// <param name="faults">Told of each that has none: the key that the document has for it, and why.</param>
internal sealed class Measuring(
    MemberFreedom freedom, DisplayUnit unit, IReadOnlyDictionary<string, FormulaValue> values, IReadOnlySet<string> untold, Action<string, string> faults)
{
    public Part Of(Part part)
    {
        if (freedom.Formulas.Count == 0)
        {
            return part;
        }

        var least = Size(part.Finished);
        var most = new Dimensions(
            Length(Measure.MostThickness, part.Most?.Thickness) ?? least.Thickness,
            Length(Measure.MostWidth, part.Most?.Width) ?? least.Width,
            Length(Measure.MostLength, part.Most?.Length) ?? least.Length);
        var fewest = Count(Measure.Quantity, part.Quantity, Limits.MaxQuantity) ?? 0;
        var mostPieces = Count(Measure.MostQuantity, part.MostQuantity, Limits.MaxQuantity);
        return part with
        {
            Finished = least,
            Most = most == least ? null : most,
            Quantity = fewest,
            MostQuantity = mostPieces == fewest ? null : mostPieces,
            Spares = Count(Measure.Spares, part.Spares, Limits.MaxSpares) ?? 0,
            Spacing = part.Spacing is { } spacing ? spacing with { Span = Length(Measure.Span, spacing.Span) ?? spacing.Span } : null,
        };
    }

    public Panel Of(Panel panel) => freedom.Formulas.Count == 0 ? panel : panel with
    {
        Finished = Size(panel.Finished),
        Quantity = Count(Measure.Quantity, panel.Quantity, Limits.MaxQuantity) ?? 0,
        NarrowestStrip = Length(Measure.NarrowestStrip, panel.NarrowestStrip),
        WidestStrip = Length(Measure.WidestStrip, panel.WidestStrip),
    };

    public BoughtItem Of(BoughtItem item) =>
        freedom.Formulas.Count == 0 ? item : item with { Quantity = Count(Measure.Quantity, item.Quantity, Limits.MaxQuantity) ?? 0 };

    private Dimensions Size(Dimensions size) => new(
        Length(Measure.Thickness, size.Thickness) ?? size.Thickness,
        Length(Measure.Width, size.Width) ?? size.Width,
        Length(Measure.Length, size.Length) ?? size.Length);

    private Length? Length(Measure measure, Length? written) => Find(measure) is not { } formula ? written
        : Told(measure, formula.TryLength(values, out var length, out var error), error) ? length
        : written;

    private int? Count(Measure measure, int? written, int most) => Find(measure) is not { } formula ? written
        : Told(measure, formula.TryCount(values, most, out var count, out var error), error) ? count
        : written;

    private Formula? Find(Measure measure)
    {
        if (!freedom.Formulas.TryGetValue(measure, out var text))
        {
            return null;
        }

        if (!Formula.TryParse(text, unit, out var formula, out var error))
        {
            faults(KeyOf(measure), error);
        }

        return formula is not null && formula.Names.Any(untold.Contains) ? null : formula;
    }

    private bool Told(Measure measure, bool isSound, string? error)
    {
        if (!isSound)
        {
            faults(KeyOf(measure), error!);
        }

        return isSound;
    }

    private static string KeyOf(Measure measure) => measure switch
    {
        Measure.Quantity or Measure.MostQuantity => "quantity",
        Measure.Spares => "spares",
        Measure.Span => "spacing",
        Measure.NarrowestStrip or Measure.WidestStrip => "strips",
        Measure.Thickness or Measure.Width or Measure.Length or Measure.MostThickness or Measure.MostWidth or Measure.MostLength => "size",
    };
}
