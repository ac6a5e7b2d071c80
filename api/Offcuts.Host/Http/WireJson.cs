using System.Text.Json.Serialization;
using Offcuts.Contracts;

namespace Offcuts.Host.Http;

/// <summary>Strict JSON: a member that is unknown, doubled, missing, null or of the wrong type or case is an error.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
    PropertyNameCaseInsensitive = false,
    NumberHandling = JsonNumberHandling.Strict,
    UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
    AllowDuplicateProperties = false,
    RespectNullableAnnotations = true,
    RespectRequiredConstructorParameters = true)]
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
[JsonSerializable(typeof(BoardFindRecord))]
[JsonSerializable(typeof(BoardTotalsRecord))]
[JsonSerializable(typeof(StockTakeStart))]
[JsonSerializable(typeof(StockTakeStepEntry))]
[JsonSerializable(typeof(StockTakeStepRecord))]
[JsonSerializable(typeof(StockTakeFinish))]
[JsonSerializable(typeof(StockTakeRecord))]
[JsonSerializable(typeof(StockTakePage))]
[JsonSerializable(typeof(PlaceEntry))]
[JsonSerializable(typeof(PlaceRecord))]
[JsonSerializable(typeof(PlaceList))]
[JsonSerializable(typeof(ShopEntry))]
[JsonSerializable(typeof(ShopRecord))]
[JsonSerializable(typeof(KeepRuleEntry))]
[JsonSerializable(typeof(KeepRuleRecord))]
[JsonSerializable(typeof(KeepAnswer))]
[JsonSerializable(typeof(CullRecord))]
[JsonSerializable(typeof(SpeciesEntry))]
[JsonSerializable(typeof(SpeciesRecord))]
[JsonSerializable(typeof(SpeciesList))]
[JsonSerializable(typeof(DesignEntry))]
[JsonSerializable(typeof(DesignRecord))]
[JsonSerializable(typeof(DesignPage))]
[JsonSerializable(typeof(OfferRecord))]
[JsonSerializable(typeof(OfferPage))]
[JsonSerializable(typeof(PriceListEntry))]
[JsonSerializable(typeof(PriceListRecord))]
[JsonSerializable(typeof(PriceLists))]
[JsonSerializable(typeof(PlanRequest))]
[JsonSerializable(typeof(InlineProblem))]
[JsonSerializable(typeof(PlanRecord))]
[JsonSerializable(typeof(PlanPage))]
[JsonSerializable(typeof(PlanResult))]
[JsonSerializable(typeof(PlanProgressRecord))]
[JsonSerializable(typeof(PlanFailure))]
[JsonSerializable(typeof(MadeWithRecord))]
[JsonSerializable(typeof(StretchRequest))]
[JsonSerializable(typeof(FillRequest))]
[JsonSerializable(typeof(StretchRecord))]
[JsonSerializable(typeof(Plans.Reproduction))]
[JsonSerializable(typeof(Problem))]
[JsonSerializable(typeof(Health))]
internal sealed partial class WireJson : JsonSerializerContext;
