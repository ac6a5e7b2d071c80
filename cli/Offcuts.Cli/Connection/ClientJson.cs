using System.Text.Json.Serialization;
using Offcuts.Contracts;

namespace Offcuts.Cli.Connections;

/// <summary>The wire's JSON as a client reads it: tolerant of members that a newer server adds.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(BoardEntry))]
[JsonSerializable(typeof(BoardRecord))]
[JsonSerializable(typeof(BoardPage))]
[JsonSerializable(typeof(BoardImport))]
[JsonSerializable(typeof(BoardImportResult))]
[JsonSerializable(typeof(ClosingEntry))]
[JsonSerializable(typeof(BoardHistory))]
[JsonSerializable(typeof(BuildYieldPage))]
[JsonSerializable(typeof(PileRecord))]
[JsonSerializable(typeof(JournalPage))]
[JsonSerializable(typeof(JournalLineRecord))]
[JsonSerializable(typeof(JournalCheckRecord))]
[JsonSerializable(typeof(BoardLinesEntry))]
[JsonSerializable(typeof(BoardLinesResult))]
[JsonSerializable(typeof(ShopEntry))]
[JsonSerializable(typeof(ShopRecord))]
[JsonSerializable(typeof(SpeciesEntry))]
[JsonSerializable(typeof(SpeciesRecord))]
[JsonSerializable(typeof(SpeciesList))]
[JsonSerializable(typeof(DesignRecord))]
[JsonSerializable(typeof(DesignPage))]
[JsonSerializable(typeof(PriceListRecord))]
[JsonSerializable(typeof(PriceLists))]
[JsonSerializable(typeof(OfferPage))]
[JsonSerializable(typeof(PlanRequest))]
[JsonSerializable(typeof(PlanRecord))]
[JsonSerializable(typeof(PlanPage))]
[JsonSerializable(typeof(InlineProblem))]
[JsonSerializable(typeof(Problem))]
[JsonSerializable(typeof(Health))]
internal sealed partial class ClientJson : JsonSerializerContext;
