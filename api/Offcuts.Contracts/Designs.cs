using System.Text.Json.Serialization;

namespace Offcuts.Contracts;

/// <summary>A design as it is entered: finished sizes in millimetres.</summary>
/// <param name="Name">The name a person calls it by.</param>
/// <param name="Description">What it is.</param>
/// <param name="Parts">Parts made of one piece each.</param>
/// <param name="Panels">Edge-glued panels.</param>
/// <param name="Groups">Finish groups that parts and panels name.</param>
/// <param name="Items">What is bought ready made.</param>
public sealed record DesignEntry(
    string Name,
    string? Description = null,
    IReadOnlyList<PartRecord>? Parts = null,
    IReadOnlyList<PanelRecord>? Panels = null,
    IReadOnlyList<GroupRecord>? Groups = null,
    IReadOnlyList<ItemRecord>? Items = null);

/// <summary>A part that is cut as one piece.</summary>
/// <param name="Name">Unique among the parts and panels of the design.</param>
/// <param name="ThicknessMm">Finished thickness.</param>
/// <param name="WidthMm">Finished width.</param>
/// <param name="LengthMm">Finished length.</param>
/// <param name="Quantity">How many.</param>
/// <param name="Species">Species or classes accepted; empty or null means what the group says.</param>
/// <param name="Appearance">The least accepted: <c>clear</c>, <c>sound-knots</c> or <c>paint</c>.</param>
/// <param name="Grain"><c>fixed</c> along the length, or <c>free</c> to be turned.</param>
/// <param name="Group">Its finish group.</param>
/// <param name="Tolerates">
/// Kinds of defects that it may contain because its face is hidden or painted, such as <c>knot</c>; null for none. Never metal.
/// </param>
/// <param name="MostThicknessMm">The largest finished thickness that will do, where <paramref name="ThicknessMm"/> is only the least; null or left out: exactly that.</param>
/// <param name="MostWidthMm">The largest finished width that will do.</param>
/// <param name="MostLengthMm">The largest finished length that will do.</param>
/// <param name="MostQuantity">The most pieces that will do, where <paramref name="Quantity"/> is only the fewest: more are made as far as they cost nothing.</param>
/// <param name="Spacing">How the pieces share a span side by side.</param>
/// <param name="Spares">Extra blanks wanted, if they cost nothing.</param>
/// <param name="Extras">What more pieces and spares may be cut from: <c>waste</c> or <c>leftovers</c>; null: more pieces from waste, spares from leftovers too.</param>
/// <param name="Layers">Of how many layers it may be face-glued at most; null or 1 if it must be in one piece.</param>
public sealed record PartRecord(
    string Name,
    decimal ThicknessMm,
    decimal WidthMm,
    decimal LengthMm,
    int Quantity = 1,
    IReadOnlyList<string>? Species = null,
    string Appearance = "sound-knots",
    string Grain = "fixed",
    string? Group = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] IReadOnlyList<string>? Tolerates = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] decimal? MostThicknessMm = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] decimal? MostWidthMm = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] decimal? MostLengthMm = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] int? MostQuantity = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] SpacingRecord? Spacing = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] int? Spares = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] string? Extras = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] int? Layers = null);

/// <summary>Pieces side by side across a span with equal gaps.</summary>
/// <param name="SpanMm">What pieces and gaps fill together.</param>
/// <param name="Ends">Whether there are gaps at both ends too.</param>
public sealed record SpacingRecord(decimal SpanMm, bool Ends = false);

/// <summary>An edge-glued panel; the grain runs along its length.</summary>
/// <param name="Name">Unique among the parts and panels of the design.</param>
/// <param name="ThicknessMm">Finished thickness.</param>
/// <param name="WidthMm">Finished width.</param>
/// <param name="LengthMm">Finished length.</param>
/// <param name="Quantity">How many.</param>
/// <param name="NarrowestStripMm">The narrowest strip; null for the shop's.</param>
/// <param name="WidestStripMm">The widest strip; null for the shop's.</param>
/// <param name="Species">Species or classes accepted; empty or null means what the group says.</param>
/// <param name="Appearance">The least accepted: <c>clear</c>, <c>sound-knots</c> or <c>paint</c>.</param>
/// <param name="Group">Its finish group.</param>
/// <param name="Tolerates">Kinds of defects that its strips may contain because its faces are hidden or painted; null for none. Never metal.</param>
public sealed record PanelRecord(
    string Name,
    decimal ThicknessMm,
    decimal WidthMm,
    decimal LengthMm,
    int Quantity = 1,
    decimal? NarrowestStripMm = null,
    decimal? WidestStripMm = null,
    IReadOnlyList<string>? Species = null,
    string Appearance = "sound-knots",
    string? Group = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] IReadOnlyList<string>? Tolerates = null);

/// <summary>Parts and panels that are finished alike.</summary>
/// <param name="Name">Unique in the design.</param>
/// <param name="OneSpecies">Whether all of the group must be of one species.</param>
/// <param name="Species">Species or classes accepted by members that name none themselves.</param>
/// <param name="Batch">
/// <c>one</c>: all of it from boards of one batch; <c>fewest</c>: from one batch if the wood costs no more for it; <c>any</c> or null: it does not matter.
/// </param>
public sealed record GroupRecord(
    string Name,
    bool OneSpecies = false,
    IReadOnlyList<string>? Species = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] string? Batch = null);

/// <summary>Something bought ready made.</summary>
/// <param name="Name">What it is.</param>
/// <param name="UnitPrice">Price of one in the shop's currency.</param>
/// <param name="Quantity">How many.</param>
/// <param name="Supplier">Where to buy it, if it matters.</param>
public sealed record ItemRecord(string Name, decimal UnitPrice, int Quantity = 1, string? Supplier = null);

/// <summary>One version of a design.</summary>
/// <param name="Reference">The name as paths and plans refer to it, for instance <c>hall-bench</c>.</param>
/// <param name="Version">Id of the content: the same content always has the same.</param>
/// <param name="Current">Whether this is the version that <paramref name="Reference"/> stands for now.</param>
/// <param name="CreatedAt">When this version was first stored (UTC).</param>
/// <param name="Design">What it says.</param>
public sealed record DesignRecord(string Reference, string Version, bool Current, DateTimeOffset CreatedAt, DesignEntry Design);

/// <summary>A design version in a list.</summary>
/// <param name="Reference">The name as paths and plans refer to it.</param>
/// <param name="Name">The name as written.</param>
/// <param name="Version">Id of the content.</param>
/// <param name="Current">Whether it is the current version.</param>
/// <param name="CreatedAt">When it was first stored (UTC).</param>
/// <param name="Parts">Pieces to cut, all quantities together.</param>
/// <param name="Panels">Panels to glue up, all quantities together.</param>
/// <param name="Items">Kinds of things to buy ready made.</param>
public sealed record DesignSummary(
    string Reference, string Name, string Version, bool Current, DateTimeOffset CreatedAt, int Parts, int Panels, int Items);

/// <summary>One page of designs, or the versions of one.</summary>
/// <param name="Items">The designs by name; versions newest first.</param>
/// <param name="Next">Cursor of the next page; null on the last.</param>
public sealed record DesignPage(IReadOnlyList<DesignSummary> Items, string? Next);
