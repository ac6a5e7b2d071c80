using Refit;

namespace Offcuts.Contracts;

/// <summary>The Web API as a client sees it. Answers other than success throw <see cref="ApiException"/> with a <see cref="Problem"/> body.</summary>
public interface IOffcutsApi
{
    /// <summary>Whether the service answers.</summary>
    [Get("/health")]
    Task<Health> GetHealthAsync(CancellationToken cancellationToken = default);

    /// <summary>One page of boards.</summary>
    [Get("/v1/boards")]
    Task<BoardPage> ListBoardsAsync(BoardQuery query, CancellationToken cancellationToken = default);

    /// <summary>Logs a board.</summary>
    [Post("/v1/boards")]
    Task<BoardRecord> CreateBoardAsync([Body] BoardEntry board, CancellationToken cancellationToken = default);

    /// <summary>One board.</summary>
    [Get("/v1/boards/{id}")]
    Task<BoardRecord> GetBoardAsync(string id, CancellationToken cancellationToken = default);

    /// <summary>Boards added up.</summary>
    [Get("/v1/boards/totals")]
    Task<BoardTotalsRecord> GetBoardTotalsAsync(TotalsQuery query, CancellationToken cancellationToken = default);

    /// <summary>The boards that give a piece, the nearest fit first.</summary>
    [Get("/v1/boards/find")]
    Task<BoardFindRecord> FindBoardsAsync(FindQuery query, CancellationToken cancellationToken = default);

    /// <summary>Everything that ever happened to a board, also one that is no longer in the inventory.</summary>
    [Get("/v1/boards/{id}/history")]
    Task<BoardHistory> GetBoardHistoryAsync(string id, CancellationToken cancellationToken = default);

    /// <summary>Which parts of which saved designs a board could become.</summary>
    [Get("/v1/boards/{id}/uses")]
    Task<BoardUsesRecord> GetBoardUsesAsync(string id, CancellationToken cancellationToken = default);

    /// <summary>Replaces what is known of a board.</summary>
    [Put("/v1/boards/{id}")]
    Task<BoardRecord> ReplaceBoardAsync(string id, [Body] BoardEntry board, CancellationToken cancellationToken = default);

    /// <summary>Forgets a board.</summary>
    [Delete("/v1/boards/{id}")]
    Task DeleteBoardAsync(string id, CancellationToken cancellationToken = default);

    /// <summary>Logs many boards, all or none.</summary>
    [Post("/v1/board-imports")]
    Task<BoardImportResult> ImportBoardsAsync([Body] BoardImport boards, CancellationToken cancellationToken = default);

    /// <summary>Logs many boards, all or none.</summary>
    /// <param name="document">A board list as people write it, <c>application/yaml</c>, or a table, <c>text/csv</c>.</param>
    /// <param name="again">Whether to make the new boards of a table though the same were imported before; null for a list.</param>
    /// <param name="cancellationToken">Gives up waiting.</param>
    [Post("/v1/board-imports")]
    Task<BoardImportResult> ImportBoardDocumentAsync([Body] HttpContent document, [AliasAs("again")] string? again = null, CancellationToken cancellationToken = default);

    /// <summary>All boards as a table for spreadsheets.</summary>
    /// <param name="separator"><c>comma</c> or <c>semicolon</c>; null for a comma.</param>
    /// <param name="cancellationToken">Gives up waiting.</param>
    [Get("/v1/board-exports")]
    [Headers("Accept: text/csv")]
    Task<string> ExportBoardsAsync([AliasAs("separator")] string? separator = null, CancellationToken cancellationToken = default);

    /// <summary>One page of the journal, newest line first.</summary>
    [Get("/v1/journal")]
    Task<JournalPage> ListJournalAsync(PageQuery query, CancellationToken cancellationToken = default);

    /// <summary>Rebuilds the inventory from the journal and compares it with what is stored.</summary>
    [Get("/v1/journal/check")]
    Task<JournalCheckRecord> CheckJournalAsync(CancellationToken cancellationToken = default);

    /// <summary>Takes a line of the journal back, which is a line of its own.</summary>
    [Post("/v1/journal/{line}/undo")]
    Task<JournalLineRecord> UndoJournalLineAsync(long line, CancellationToken cancellationToken = default);

    /// <summary>Logs boards as a maker says them, one line each, all or none; or only says what would be understood.</summary>
    [Post("/v1/board-lines")]
    Task<BoardLinesResult> LogLinesAsync([Body] BoardLinesEntry lines, CancellationToken cancellationToken = default);

    /// <summary>Labels for boards, one HTML page that prints each sheet on paper of its own.</summary>
    [Get("/v1/board-labels")]
    [Headers("Accept: text/html")]
    Task<string> GetLabelsAsync(LabelQuery query, CancellationToken cancellationToken = default);

    /// <summary>One sheet of labels for boards as SVG.</summary>
    /// <param name="sheet">Its number, from 1.</param>
    /// <param name="query">Which boards, and on which stock.</param>
    /// <param name="cancellationToken">Gives up waiting.</param>
    [Get("/v1/board-labels/{sheet}")]
    [Headers("Accept: image/svg+xml")]
    Task<string> GetLabelSheetAsync(int sheet, LabelQuery query, CancellationToken cancellationToken = default);

    /// <summary>The places where boards lie.</summary>
    [Get("/v1/places")]
    Task<PlaceList> ListPlacesAsync(CancellationToken cancellationToken = default);

    /// <summary>One place.</summary>
    [Get("/v1/places/{name}")]
    Task<PlaceRecord> GetPlaceAsync(string name, CancellationToken cancellationToken = default);

    /// <summary>Says what a place is.</summary>
    [Put("/v1/places/{name}")]
    Task<PlaceRecord> ReplacePlaceAsync(string name, [Body] PlaceEntry place, CancellationToken cancellationToken = default);

    /// <summary>Forgets what was said of a place; boards that lie there stay.</summary>
    [Delete("/v1/places/{name}")]
    Task DeletePlaceAsync(string name, CancellationToken cancellationToken = default);

    /// <summary>One page of stock-takes, newest first.</summary>
    [Get("/v1/stock-takes")]
    Task<StockTakePage> ListStockTakesAsync(StockTakeQuery query, CancellationToken cancellationToken = default);

    /// <summary>Begins a stock-take of a place, or goes on with the one that is open.</summary>
    [Post("/v1/stock-takes")]
    Task<StockTakeRecord> StartStockTakeAsync([Body] StockTakeStart place, CancellationToken cancellationToken = default);

    /// <summary>How far a stock-take is.</summary>
    [Get("/v1/stock-takes/{number}")]
    Task<StockTakeRecord> GetStockTakeAsync(long number, CancellationToken cancellationToken = default);

    /// <summary>One step: a board is there, is otherwise, is not there, or is not in the book.</summary>
    [Post("/v1/stock-takes/{number}/steps")]
    Task<StockTakeStepRecord> TakeStepAsync(long number, [Body] StockTakeStepEntry step, CancellationToken cancellationToken = default);

    /// <summary>Ends a stock-take.</summary>
    [Post("/v1/stock-takes/{number}/finish")]
    Task<StockTakeRecord> FinishStockTakeAsync(long number, [Body] StockTakeFinish how, CancellationToken cancellationToken = default);

    /// <summary>The shop.</summary>
    [Get("/v1/shop")]
    Task<ShopRecord> GetShopAsync(CancellationToken cancellationToken = default);

    /// <summary>Replaces the shop; what is left out takes its default.</summary>
    [Put("/v1/shop")]
    Task<ShopRecord> ReplaceShopAsync([Body] ShopEntry shop, CancellationToken cancellationToken = default);

    /// <summary>What the shop keeps.</summary>
    [Get("/v1/keep-rule")]
    Task<KeepRuleRecord> GetKeepRuleAsync(CancellationToken cancellationToken = default);

    /// <summary>Replaces what the shop keeps.</summary>
    /// <param name="document">The document as people write it (<c>application/yaml</c>), or a <see cref="KeepRuleEntry"/> (<c>application/json</c>).</param>
    /// <param name="cancellationToken">Gives up waiting.</param>
    [Put("/v1/keep-rule")]
    Task<KeepRuleRecord> ReplaceKeepRuleAsync([Body] HttpContent document, CancellationToken cancellationToken = default);

    /// <summary>What of the stock the shop may let go; nothing is changed by asking.</summary>
    [Get("/v1/cull")]
    Task<CullRecord> GetCullAsync(CullQuery query, CancellationToken cancellationToken = default);

    /// <summary>Whether a piece is worth keeping.</summary>
    /// <param name="piece">The piece as a maker says it: <c>3/4 x 2 x 14 walnut</c>.</param>
    /// <param name="cancellationToken">Gives up waiting.</param>
    [Get("/v1/keep-rule/answer")]
    Task<KeepAnswer> AskKeepRuleAsync([AliasAs("piece")] string piece, CancellationToken cancellationToken = default);

    /// <summary>All species, the reference list and the shop's own.</summary>
    [Get("/v1/species")]
    Task<SpeciesList> ListSpeciesAsync(CancellationToken cancellationToken = default);

    /// <summary>Adds a species of the shop's own.</summary>
    [Post("/v1/species")]
    Task<SpeciesRecord> CreateSpeciesAsync([Body] SpeciesEntry species, CancellationToken cancellationToken = default);

    /// <summary>The current version of each design.</summary>
    [Get("/v1/designs")]
    Task<DesignPage> ListDesignsAsync(PageQuery query, CancellationToken cancellationToken = default);

    /// <summary>Stores a design; the same content again is the same version (200 instead of 201).</summary>
    /// <param name="document">The document as people write it (<c>application/yaml</c>), or a <see cref="DesignEntry"/> (<c>application/json</c>).</param>
    /// <param name="cancellationToken">Gives up waiting.</param>
    [Post("/v1/designs")]
    Task<DesignRecord> StoreDesignAsync([Body] HttpContent document, CancellationToken cancellationToken = default);

    /// <summary>A design by its reference (the current version) or version id.</summary>
    [Get("/v1/designs/{reference}")]
    Task<DesignRecord> GetDesignAsync(string reference, CancellationToken cancellationToken = default);

    /// <summary>All versions of a design, newest first.</summary>
    [Get("/v1/designs/{reference}/versions")]
    Task<DesignPage> ListDesignVersionsAsync(string reference, CancellationToken cancellationToken = default);

    /// <summary>Forgets a design with all its versions; plans keep theirs.</summary>
    [Delete("/v1/designs/{reference}")]
    Task DeleteDesignAsync(string reference, CancellationToken cancellationToken = default);

    /// <summary>Ranks the saved designs against the free stock; answered when it is done. Giving up waiting ends it.</summary>
    [Get("/v1/fits")]
    Task<FitList> RankFitsAsync(FitQuery query, CancellationToken cancellationToken = default);

    /// <summary>The same as server-sent events as it goes: <c>progress</c>, <c>place</c> (best first), then <c>end</c> or <c>fault</c>. Closing the stream ends it.</summary>
    [Get("/v1/fits")]
    [Headers("Accept: text/event-stream")]
    Task<Stream> StreamFitsAsync(FitQuery query, CancellationToken cancellationToken = default);

    /// <summary>All price lists.</summary>
    [Get("/v1/price-lists")]
    Task<PriceLists> ListPriceListsAsync(CancellationToken cancellationToken = default);

    /// <summary>A supplier's price list.</summary>
    [Get("/v1/price-lists/{supplier}")]
    Task<PriceListRecord> GetPriceListAsync(string supplier, CancellationToken cancellationToken = default);

    /// <summary>Replaces all offers of a supplier.</summary>
    /// <param name="supplier">The supplier as paths name it: lower-case words with hyphens.</param>
    /// <param name="document">The document as people write it (<c>application/yaml</c>), or a <see cref="PriceListEntry"/> (<c>application/json</c>).</param>
    /// <param name="cancellationToken">Gives up waiting.</param>
    [Put("/v1/price-lists/{supplier}")]
    Task<PriceListRecord> ReplacePriceListAsync(string supplier, [Body] HttpContent document, CancellationToken cancellationToken = default);

    /// <summary>Replaces all offers of the supplier that the document names.</summary>
    /// <param name="document">The document as people write it (<c>application/yaml</c>), or a <see cref="PriceListEntry"/> (<c>application/json</c>).</param>
    /// <param name="cancellationToken">Gives up waiting.</param>
    [Post("/v1/price-lists")]
    Task<PriceListRecord> StorePriceListAsync([Body] HttpContent document, CancellationToken cancellationToken = default);

    /// <summary>Forgets a supplier's offers.</summary>
    [Delete("/v1/price-lists/{supplier}")]
    Task DeletePriceListAsync(string supplier, CancellationToken cancellationToken = default);

    /// <summary>One page of offers.</summary>
    [Get("/v1/offers")]
    Task<OfferPage> ListOffersAsync(OfferQuery query, CancellationToken cancellationToken = default);

    /// <summary>The builds that wait, the most important first.</summary>
    [Get("/v1/queue")]
    Task<QueueRecord> GetQueueAsync(CancellationToken cancellationToken = default);

    /// <summary>Adds a build to the queue.</summary>
    [Post("/v1/queue")]
    Task<QueueRecord> AddToQueueAsync([Body] QueueEntry entry, CancellationToken cancellationToken = default);

    /// <summary>Moves a build in the queue.</summary>
    [Post("/v1/queue/{id}/moves")]
    Task<QueueRecord> MoveInQueueAsync(long id, [Body] QueueMove move, CancellationToken cancellationToken = default);

    /// <summary>Takes a build out of the queue.</summary>
    [Delete("/v1/queue/{id}")]
    Task RemoveFromQueueAsync(long id, CancellationToken cancellationToken = default);

    /// <summary>Asks for a plan. The answer may still be planning: ask again with <see cref="GetPlanAsync"/>.</summary>
    /// <param name="request">What to plan.</param>
    /// <param name="prefer"><c>wait=N</c> to wait up to N seconds for the finished plan; null to come back at once.</param>
    /// <param name="cancellationToken">Gives up waiting; the run goes on.</param>
    [Post("/v1/plans")]
    Task<PlanRecord> CreatePlanAsync([Body] PlanRequest request, [Header("Prefer")] string? prefer = null, CancellationToken cancellationToken = default);

    /// <summary>One page of planning runs, newest first.</summary>
    [Get("/v1/plans")]
    Task<PlanPage> ListPlansAsync(PlanQuery query, CancellationToken cancellationToken = default);

    /// <summary>One planning run with its plan.</summary>
    [Get("/v1/plans/{id}")]
    Task<PlanRecord> GetPlanAsync(string id, CancellationToken cancellationToken = default);

    /// <summary>Ends a run early; the best plan so far is kept.</summary>
    [Post("/v1/plans/{id}/cancellation")]
    Task<PlanRecord> CancelPlanAsync(string id, CancellationToken cancellationToken = default);

    /// <summary>Accepts a plan: it takes the boards that it cuts.</summary>
    [Post("/v1/plans/{id}/acceptance")]
    Task<PlanRecord> AcceptPlanAsync(string id, CancellationToken cancellationToken = default);

    /// <summary>A plan gives back the boards that it has not cut.</summary>
    [Post("/v1/plans/{id}/release")]
    Task<PlanRecord> ReleasePlanAsync(string id, CancellationToken cancellationToken = default);

    /// <summary>Says that boards of an accepted plan are cut.</summary>
    [Post("/v1/plans/{id}/closings")]
    Task<PlanRecord> CloseBoardsAsync(string id, [Body] ClosingEntry closing, CancellationToken cancellationToken = default);

    /// <summary>The yield of each build, the last changed first.</summary>
    [Get("/v1/reports/builds")]
    Task<BuildYieldPage> ListBuildYieldsAsync(PageQuery query, CancellationToken cancellationToken = default);

    /// <summary>The wood on the rack over time.</summary>
    [Get("/v1/reports/pile")]
    Task<PileRecord> GetPileAsync(CancellationToken cancellationToken = default);

    /// <summary>The wood on the rack over time as a chart, SVG.</summary>
    [Get("/v1/reports/pile/chart")]
    [Headers("Accept: image/svg+xml")]
    Task<string> GetPileChartAsync(CancellationToken cancellationToken = default);

    /// <summary>Which value of a design's parameter stays within the money; answers when it is known or the time is up.</summary>
    [Post("/v1/stretches")]
    Task<StretchRecord> StretchAsync([Body] StretchRequest request, CancellationToken cancellationToken = default);

    /// <summary>The same as server-sent events: <c>progress</c>, then <c>end</c> or <c>fault</c>. Closing the stream ends it.</summary>
    [Post("/v1/stretches")]
    [Headers("Accept: text/event-stream")]
    Task<Stream> StreamStretchAsync([Body] StretchRequest request, CancellationToken cancellationToken = default);

    /// <summary>How many copies of a design the free stock yields; answers when it is known or the time is up.</summary>
    [Post("/v1/fills")]
    Task<StretchRecord> FillAsync([Body] FillRequest request, CancellationToken cancellationToken = default);

    /// <inheritdoc cref="StreamStretchAsync"/>
    [Post("/v1/fills")]
    [Headers("Accept: text/event-stream")]
    Task<Stream> StreamFillAsync([Body] FillRequest request, CancellationToken cancellationToken = default);

    /// <summary>Which mix of several designs puts most of the free stock into builds; answers when it is known or the time is up.</summary>
    [Post("/v1/mixes")]
    Task<MixRecord> MixAsync([Body] MixRequest request, CancellationToken cancellationToken = default);

    /// <inheritdoc cref="StreamStretchAsync"/>
    [Post("/v1/mixes")]
    [Headers("Accept: text/event-stream")]
    Task<Stream> StreamMixAsync([Body] MixRequest request, CancellationToken cancellationToken = default);

    /// <summary>What one more offcut would save of what the plan spends.</summary>
    [Get("/v1/plans/{id}/worth-having")]
    Task<WorthHavingList> GetWorthHavingAsync(string id, [Query] int? budgetMs = null, CancellationToken cancellationToken = default);

    /// <summary>What to buy for a plan, in the words of the counter.</summary>
    [Get("/v1/plans/{id}/shopping")]
    Task<ShoppingRecord> GetShoppingAsync(string id, CancellationToken cancellationToken = default);

    /// <summary>All that the plan was made from; it may be sent back as the <c>inline</c> of a new request.</summary>
    [Get("/v1/plans/{id}/problem")]
    Task<InlineProblem> GetPlanProblemAsync(string id, CancellationToken cancellationToken = default);

    /// <summary>The printable cut sheet, one self-contained HTML page.</summary>
    [Get("/v1/plans/{id}/cut-sheet")]
    [Headers("Accept: text/html")]
    Task<string> GetCutSheetAsync(string id, CancellationToken cancellationToken = default);

    /// <summary>The cutting diagram of one board of the plan as SVG.</summary>
    /// <param name="id">Id of the run.</param>
    /// <param name="number">Number of the board in the plan, from 1.</param>
    /// <param name="cancellationToken">Gives up waiting.</param>
    [Get("/v1/plans/{id}/diagrams/{number}")]
    [Headers("Accept: image/svg+xml")]
    Task<string> GetDiagramAsync(string id, int number, CancellationToken cancellationToken = default);
}
