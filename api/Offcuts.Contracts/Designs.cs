using System.Text.Json.Serialization;

namespace Offcuts.Contracts;

/// <summary>A design as it is entered: finished sizes in millimetres.</summary>
/// <param name="Name">The name a person calls it by.</param>
/// <param name="Description">What it is.</param>
/// <param name="Parts">Parts made of one piece each.</param>
/// <param name="Panels">Edge-glued panels.</param>
/// <param name="Groups">Finish groups that parts and panels name.</param>
/// <param name="Items">What is bought ready made.</param>
/// <param name="Parameters">Lengths and counts that the design leaves open, and values that follow from them, by the names that formulas use.</param>
/// <param name="FormulaUnit">The unit of bare numbers in formulas, <c>inch</c> or <c>millimetre</c>; millimetre if left out.</param>
/// <param name="Choices">What can be built in one of several ways: its answers by its name, the preferred first.</param>
/// <param name="Tags">Words to find it by; null for none.</param>
/// <param name="Hours">Hours of work that its maker reckons with; null if not said.</param>
public sealed record DesignEntry(
    string Name,
    string? Description = null,
    IReadOnlyList<PartRecord>? Parts = null,
    IReadOnlyList<PanelRecord>? Panels = null,
    IReadOnlyList<GroupRecord>? Groups = null,
    IReadOnlyList<ItemRecord>? Items = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] IReadOnlyDictionary<string, ParameterRecord>? Parameters = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] string? FormulaUnit = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] IReadOnlyDictionary<string, IReadOnlyList<string>>? Choices = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] IReadOnlyList<string>? Tags = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] decimal? Hours = null);

/// <summary>A parameter, or a value that follows from parameters: exactly one of the three.</summary>
/// <param name="Length">Limits of a length.</param>
/// <param name="Count">Limits of a count.</param>
/// <param name="Formula">How the value follows from others.</param>
public sealed record ParameterRecord(
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] LengthRangeRecord? Length = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] CountRangeRecord? Count = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] string? Formula = null);

/// <summary>The limits of a length.</summary>
/// <param name="FromMm">The least.</param>
/// <param name="ToMm">None is above this.</param>
/// <param name="StepMm">From one value to the next.</param>
/// <param name="DefaultMm">The value where nothing else is asked for; null for the least.</param>
public sealed record LengthRangeRecord(decimal FromMm, decimal ToMm, decimal StepMm, decimal? DefaultMm = null);

/// <summary>The limits of a count.</summary>
/// <param name="From">The least.</param>
/// <param name="To">None is above this.</param>
/// <param name="Step">From one value to the next.</param>
/// <param name="Default">The value where nothing else is asked for; null for the least.</param>
public sealed record CountRangeRecord(int From, int To, int Step = 1, int? Default = null);

/// <summary>A part is made only with this answer to a choice.</summary>
/// <param name="Choice">Name of the choice.</param>
/// <param name="Answer">The answer.</param>
public sealed record ConditionRecord(string Choice, string Answer);

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
/// <param name="Formulas">
/// Formulas by the names of the members that they give (<c>lengthMm</c>, <c>quantity</c>, <c>spanMm</c> and so on); such a member's own number is what the formula gives at the parameters'
/// defaults, and is written anew whatever is sent. Made none times, it is left out.
/// </param>
/// <param name="When">The answers to choices without which it is not made.</param>
/// <param name="InOrder">Whether an earlier species of its list is preferred to a later one where the money is equal.</param>
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
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] int? Layers = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] IReadOnlyDictionary<string, string>? Formulas = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] IReadOnlyList<ConditionRecord>? When = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] bool? InOrder = null);

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
/// <param name="Formulas">
/// Formulas by the names of the members that they give (<c>lengthMm</c>, <c>quantity</c> and so on); such a member's own number is what the formula gives at the parameters'
/// defaults, and is written anew whatever is sent. Made none times, it is left out.
/// </param>
/// <param name="When">The answers to choices without which it is not made.</param>
/// <param name="InOrder">Whether an earlier species of its list is preferred to a later one where the money is equal.</param>
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
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] IReadOnlyList<string>? Tolerates = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] IReadOnlyDictionary<string, string>? Formulas = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] IReadOnlyList<ConditionRecord>? When = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] bool? InOrder = null);

/// <summary>Parts and panels that are finished alike.</summary>
/// <param name="Name">Unique in the design.</param>
/// <param name="OneSpecies">Whether all of the group must be of one species.</param>
/// <param name="Species">Species or classes accepted by members that name none themselves.</param>
/// <param name="Batch">
/// <c>one</c>: all of it from boards of one batch; <c>fewest</c>: from one batch if the wood costs no more for it; <c>any</c> or null: it does not matter.
/// </param>
/// <param name="InOrder">Whether an earlier species of its list is preferred to a later one where the money is equal.</param>
public sealed record GroupRecord(
    string Name,
    bool OneSpecies = false,
    IReadOnlyList<string>? Species = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] string? Batch = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] bool? InOrder = null);

/// <summary>Something bought ready made.</summary>
/// <param name="Name">What it is.</param>
/// <param name="UnitPrice">Price of one in the shop's currency.</param>
/// <param name="Quantity">How many.</param>
/// <param name="Supplier">Where to buy it, if it matters.</param>
/// <param name="Formulas">
/// Formulas by the names of the members that they give (only <c>quantity</c>); such a member's own number is what the formula gives at the parameters'
/// defaults, and is written anew whatever is sent. Made none times, it is left out.
/// </param>
/// <param name="When">The answers to choices without which it is not made.</param>
public sealed record ItemRecord(
    string Name,
    decimal UnitPrice,
    int Quantity = 1,
    string? Supplier = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] IReadOnlyDictionary<string, string>? Formulas = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] IReadOnlyList<ConditionRecord>? When = null);

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
/// <param name="Tags">Words to find it by; null for none.</param>
/// <param name="Hours">Hours of work that its maker reckons with; null if not said.</param>
public sealed record DesignSummary(
    string Reference, string Name, string Version, bool Current, DateTimeOffset CreatedAt, int Parts, int Panels, int Items,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] IReadOnlyList<string>? Tags = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] decimal? Hours = null);

/// <summary>One page of designs, or the versions of one.</summary>
/// <param name="Items">The designs by name; versions newest first.</param>
/// <param name="Next">Cursor of the next page; null on the last.</param>
public sealed record DesignPage(IReadOnlyList<DesignSummary> Items, string? Next);
