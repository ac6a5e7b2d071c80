using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using Offcuts.Domain;

namespace Offcuts.Documents;

/// <summary>A supplier's price list, in YAML or JSON.</summary>
public static class PriceListDocument
{
    private static readonly string[] Forms = ["piece", "running", "random"];

    /// <summary>Reads a price list.</summary>
    /// <param name="text">The document, at most 1 MB.</param>
    /// <param name="bareUnit">The unit of bare numbers where the document does not say (key <c>unit</c>).</param>
    /// <param name="catalogue">The species at hand.</param>
    /// <param name="currency">The shop's currency, in which all prices are.</param>
    /// <exception cref="OffcutsException"><see cref="ErrorCode.Invalid"/>, with every fault, its pointer and its line.</exception>
    public static PriceList Parse(string text, DisplayUnit bareUnit, SpeciesCatalogue catalogue, string currency = "USD")
    {
        var faults = new DocumentFaults("price list");
        var root = new Fields(NodeReader.Read(text, faults), faults);
        var context = DocumentContext.Of(root, faults, bareUnit, catalogue, currency);
        var supplier = root.Text("supplier");
        if (supplier.Length > 0 && Slug.Of(supplier).Length == 0)
        {
            root.Fault("supplier", "The supplier's name needs at least one letter from a to z or a digit, to make ids of.");
        }

        var terms = new SupplierTerms(supplier)
        {
            Delivery = context.OptionalPrice(root, "delivery"),
            MinimumOrder = context.OptionalPrice(root, "minimum order"),
        };
        var groups = root.Groups("offers", required: true);
        if (groups.Count > Limits.MaxOffers)
        {
            root.Fault("offers", FormattableString.Invariant($"There are {groups.Count} offers: give at most {Limits.MaxOffers}."));
        }

        var ids = new OfferIds(supplier);
        var offers = groups.Select(fields => ToOffer(fields, supplier, ids, context)).ToList();
        root.End();
        faults.ThrowIfAny();
        foreach (var (offer, fields) in offers.Zip(groups))
        {
            faults.Add(OfferRules.Check(offer), fields.Mapping);
        }

        faults.ThrowIfAny();
        return new PriceList(supplier, offers) { Terms = terms };
    }

    private static Offer ToOffer(Fields fields, string supplier, OfferIds ids, DocumentContext context)
    {
        var name = fields.OptionalText("name");
        var species = context.Species(fields);
        var kind = DocumentContext.Kind(fields, species);
        var surface = DocumentContext.Surface(fields) ?? (kind == BoardKind.Sheet ? Surface.Surfaced : Surface.Rough);
        var thickness = context.Length(fields, "thickness");
        DocumentContext.CheckQuarters(fields, "thickness", surface);
        var offer = new Offer
        {
            Id = ids.Next(name ?? $"{species?.Id} {(fields.Optional("thickness") as Scalar)?.Text}"),
            Supplier = supplier,
            Name = name,
            Kind = kind,
            Species = species?.Id ?? "",
            Thickness = thickness,
            Surface = surface,
            Appearance = fields.Word<Appearance>("appearance") ?? Appearance.Clear,
            Form = Form(fields, context),
            Steps = [.. fields.Groups("steps").Select(step => Step(step, context))],
            Available = fields.OptionalWhole("available", 0, Limits.MaxQuantity),
        };
        fields.End();
        return offer;
    }

    private static PriceStep Step(Fields fields, DocumentContext context)
    {
        fields.TryRead<decimal>(fields.Required("from"), ReadFrom, out var from);
        var step = new PriceStep(from, context.Price(fields, "price"));
        fields.End();
        return step;
    }

    private static bool ReadFrom(string text, out decimal from, [NotNullWhen(false)] out string? error)
    {
        error = decimal.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out from)
            ? null
            : $"{LengthText.Quote(text)} is not a number of pieces, feet, board feet or whatever the price is for: write for instance 50.";
        return error is null;
    }

    private static OfferForm Form(Fields fields, DocumentContext context)
    {
        var (piece, running, random) = (fields.Group("piece"), fields.Group("running"), fields.Group("random"));
        var given = Forms.Where(fields.IsThere).ToList();
        if (given.Count != 1)
        {
            fields.Fault(given.LastOrDefault() ?? "", $"Give exactly one of {string.Join(", ", Forms)}: there are {given.Count}.");
        }

        OfferForm form = piece is not null ? Piece(piece, context)
            : running is not null ? Running(running, context)
            : random is not null ? Random(random, context)
            : new ByThePiece(default, default, default);
        (piece ?? running ?? random)?.End();
        return form;
    }

    private static ByThePiece Piece(Fields fields, DocumentContext context)
    {
        fields.TryRead(
            fields.Required("size"),
            (string text, out (Length Width, Length Length) value, out string? error) =>
                SizeText.TryParseFace(text, context.Unit, out value.Width, out value.Length, out error),
            out var face);
        return new(face.Width, face.Length, context.Price(fields, "price"));
    }

    private static ByRunningLength Running(Fields fields, DocumentContext context)
    {
        var width = context.Length(fields, "width");
        var lengths = Lengths(fields, "lengths", context);
        var (price, isMetric) = PriceOf(fields, "price per foot", "price per metre", context);
        return new(width, lengths, price, isMetric ? RunningUnit.Metre : RunningUnit.Foot);
    }

    private static ByVolume Random(Fields fields, DocumentContext context)
    {
        var widths = Lengths(fields, "widths", context);
        var lengths = Lengths(fields, "lengths", context);
        var (price, isMetric) = PriceOf(fields, "price per board foot", "price per cubic metre", context);
        return new(widths, lengths, price, isMetric ? VolumeUnit.CubicMetre : VolumeUnit.BoardFoot);
    }

    private static List<Length> Lengths(Fields fields, string key, DocumentContext context)
    {
        fields.Required(key);
        return [.. fields.Scalars(key).Select(scalar => context.Length(fields, scalar))];
    }

    private static (Money Price, bool IsMetric) PriceOf(Fields fields, string imperial, string metric, DocumentContext context)
    {
        fields.Optional(imperial);
        var isMetric = fields.Optional(metric) is not null;
        if (fields.IsThere(imperial) == fields.IsThere(metric))
        {
            fields.Fault(metric, $"Give exactly one of '{imperial}' and '{metric}'.");
            return default;
        }

        return (context.Price(fields, isMetric ? metric : imperial), isMetric);
    }
}
