using Offcuts.Contracts;

namespace Offcuts.Host.Reference;

/// <summary>All operations of the Web API, in the order of the reference page.</summary>
internal static class Operations
{
    private static readonly (string, string)[] Paging =
        [("limit", "Entries on a page, 1 to 500; 100 if left out."), ("cursor", "The next of the page before.")];

    private static readonly (string, string)[] Labels =
    [
        ("stock", $"The sheet of labels: {string.Join(", ", Pictures.Labels.LabelStock.All.Select(stock => stock.Name))}; the first if left out."),
        ("ids", "Ids of boards with commas between them; all that are free or reserved if left out."),
        ("place", "Where the boards lie, exactly as entered."),
        ("skip", "How many labels of the first sheet were used before."),
    ];

    private static readonly (string, string)[] Boards =
    [
        ("species", "Species id."), ("minThicknessMm", "Least thickness in millimetres."), ("maxThicknessMm", "Greatest thickness in millimetres."),
        ("minLengthMm", "Least length in millimetres."), ("maxLengthMm", "Greatest length in millimetres."), ("minWidthMm", "Least width in millimetres."),
        ("status", "free, reserved, used or gone."), ("kind", "solid or sheet."), ("place", "Where it lies, exactly as entered."),
        ("batch", "Its batch, exactly as entered."), ("loggedBefore", "Only those logged before this day (UTC), for instance 2026-03-14."),
    ];

    public static IReadOnlyList<Operation> All { get; } =
    [
        new("GET", "/health", "getHealth", "Whether the service answers."),
        new("GET", "/problems/{slug}", "getProblemPage", "What a kind of problem means and how to mend it."),

        new("GET", "/v1/boards", "listBoards", "One page of boards, oldest first or sorted.")
        {
            Query =
            [
                .. Boards,
                ("sort", "species, thickness, width, length, place, batch or age (youngest first), with - before it for the other way round; in the order of logging if left out."),
                .. Paging,
            ],
        },
        new("POST", "/v1/boards", "createBoard", "Logs a board.") { Body = typeof(BoardEntry), Example = Examples.Board },
        new("GET", "/v1/boards/totals", "getBoardTotals", "How many boards there are, their volume and what they are worth, by what they have in common; free ones and those held by plans unless a status is asked for.")
        {
            Query = [.. Boards, ("by", "species (if left out), thickness, length (in bands), place, batch or age.")],
        },
        new("GET", "/v1/boards/find", "findBoards", "Which free boards give a piece after milling, by the rules of plans, the nearest fit first; where none does, what comes nearest and why it does not.")
        {
            Query =
            [
                ("text", "The piece as a maker says it, finished, in any order: walnut 3/4 x 5 x 36. Else give species and sizes."),
                ("species", "Species id."), ("thicknessMm", "Finished thickness in millimetres."), ("widthMm", "Finished width in millimetres."),
                ("lengthMm", "Finished length in millimetres."), ("quantity", "How many are wanted; 1 if left out."),
                ("appearance", "clear (if left out), sound-knots or paint: the least that will do."), ("grain", "fixed (if left out), or free for a piece that may be turned."),
                ("place", "Only boards that lie there, exactly as entered."), ("batch", "Only boards of that batch, exactly as entered."),
                ("limit", "The most boards to list, 1 to 500; 20 if left out."),
            ],
        },
        new("GET", "/v1/boards/{id}", "getBoard", "One board."),
        new("GET", "/v1/boards/{id}/history", "getBoardHistory", "Everything that ever happened to a board, also one that is no longer in the inventory."),
        new("GET", "/v1/boards/{id}/uses", "getBoardUses", "Which parts of which saved designs a board could become, and how many of each where nothing else is cut from it."),
        new("PUT", "/v1/boards/{id}", "replaceBoard", "Replaces what is known of a board.") { Body = typeof(BoardEntry), Example = Examples.Board },
        new("DELETE", "/v1/boards/{id}", "deleteBoard", "Forgets a board."),
        new("POST", "/v1/board-imports", "importBoards", "Logs many boards, all or none. A table also changes boards by their ids, and the same table makes no board twice.")
        {
            Body = typeof(BoardImport),
            Example = $$"""{"items":[{{Examples.Board}}]}""",
            Document = Examples.BoardList,
            Table = Examples.BoardTable,
            Query = [("again", "true to log the new boards of a table though the same were imported before. Of tables only.")],
        },
        new("GET", "/v1/board-exports", "exportBoards", "All boards as a table for spreadsheets (CSV).")
        {
            Query = [("separator", "comma (if left out) or semicolon; with a semicolon decimal numbers have a comma.")],
        },

        new("GET", "/v1/journal", "listJournal", "One page of the journal: every change of the stock, newest first.") { Query = Paging },
        new("GET", "/v1/journal/check", "checkJournal", "Rebuilds the stock from the journal and compares it with what is stored."),
        new("POST", "/v1/journal/{line}/undo", "undoJournalLine", "Takes a line of the journal back, as long as nothing is built on it."),

        new("POST", "/v1/board-lines", "logBoardLines", "Logs boards as a maker says them, one line each, all or none; or only says what would be understood (dryRun).")
        {
            Body = typeof(BoardLinesEntry),
            Example = Examples.BoardLines,
        },

        new("GET", "/v1/board-labels", "getBoardLabels", "Labels with id, species, size and a QR code of the id, one HTML page that prints each sheet on paper of its own.") { Query = Labels },
        new("GET", "/v1/board-labels/{sheet}", "getBoardLabelSheet", "One of those sheets, SVG.") { Query = Labels },

        new("GET", "/v1/places", "listPlaces", "The places where boards lie: how hard each is to get at, and what lies there."),
        new("GET", "/v1/places/{name}", "getPlace", "One place."),
        new("PUT", "/v1/places/{name}", "replacePlace", "Says how hard it is to get at a place, which plans heed, and how much it is to hold.") { Body = typeof(PlaceEntry), Example = Examples.Place },
        new("DELETE", "/v1/places/{name}", "deletePlace", "Forgets what was said of a place; boards that lie there stay."),

        new("GET", "/v1/stock-takes", "listStockTakes", "One page of stock-takes, newest first.") { Query = [("state", "open or finished."), .. Paging] },
        new("POST", "/v1/stock-takes", "startStockTake", "Begins a stock-take of one place (201), or goes on with the one that is open (200). A place that the book does not know is refused, unless it is said to be new.") { Body = typeof(StockTakeStart), Example = Examples.StockTake },
        new("GET", "/v1/stock-takes/{number}", "getStockTake", "How far a stock-take is: what it has dealt with, and what is still unseen."),
        new("POST", "/v1/stock-takes/{number}/steps", "takeStockTakeStep", "One step: a board is there (confirm), is there but otherwise (correct), is not there (strike), or is not in the book (line).")
        {
            Body = typeof(StockTakeStepEntry),
            Example = Examples.StockTakeStep,
        },
        new("POST", "/v1/stock-takes/{number}/finish", "finishStockTake", "Ends a stock-take. What is unseen is struck off or left in the book, which must be said.")
        {
            Body = typeof(StockTakeFinish),
            Example = Examples.StockTakeFinish,
        },

        new("GET", "/v1/shop", "getShop", "The shop: unit, currency, kerf, allowances, machines."),
        new("PUT", "/v1/shop", "replaceShop", "Replaces the shop; what is left out takes its default.") { Body = typeof(ShopEntry), Example = Examples.Shop },
        new("GET", "/v1/keep-rule", "getKeepRule", "What the shop keeps: plans return such leftovers to the rack."),
        new("PUT", "/v1/keep-rule", "replaceKeepRule", "Replaces what the shop keeps; no entries to keep by the shop's keep size alone.")
        {
            Body = typeof(KeepRuleEntry),
            Example = Examples.KeepRule,
            Document = Examples.KeepRuleDocument,
        },
        new("GET", "/v1/keep-rule/answer", "askKeepRule", "Whether a piece is worth keeping, and why.")
        {
            Query = [("piece", "The piece as a maker says it: thickness x width x length and species, for instance 3/4 x 2 x 14 walnut.")],
        },
        new("GET", "/v1/cull", "getCull", "What of the stock the shop may let go, and why; nothing is changed by asking.")
        {
            Query =
            [
                ("top", "The most rows of boards to suggest, 1 to 2000."), ("freeM3", "Suggest no more than makes so many cubic metres of space."),
                ("olderThanDays", "From how many days on a board has lain for long; 730 if left out."),
            ],
        },
        new("GET", "/v1/species", "listSpecies", "All species, the reference list and the shop's own."),
        new("POST", "/v1/species", "createSpecies", "Adds a species of the shop's own.") { Body = typeof(SpeciesEntry), Example = Examples.Species },

        new("GET", "/v1/designs", "listDesigns", "The current version of each design.") { Query = Paging },
        new("POST", "/v1/designs", "storeDesign", "Stores a design; the same content again is the same version (200 instead of 201).")
        {
            Body = typeof(DesignEntry),
            Example = Examples.Design,
            Document = Examples.DesignDocument,
        },
        new("GET", "/v1/designs/{reference}", "getDesign", "A design by its reference (the current version) or a version id."),
        new("DELETE", "/v1/designs/{reference}", "deleteDesign", "Forgets a design with all its versions; plans keep theirs."),
        new("GET", "/v1/designs/{reference}/versions", "listDesignVersions", "All versions of a design, newest first."),

        new("GET", "/v1/fits", "rankFits", "Ranks the saved designs against the free stock. With Accept: text/event-stream as events while it goes: progress, place (best first; a place once told stays), then end or fault. Closing the connection ends it.")
        {
            Query =
            [
                ("order", "cheapest to finish (if left out), or pile: what eats most of it."), ("species", "Only boards of this species are the pile; what eats none of it is left out."),
                ("place", "Only boards at this place are the pile, exactly as entered."), ("batch", "Only boards of this batch are the pile, exactly as entered."),
                ("tags", "Tags that a design must have, with commas between them."), ("maxHours", "The most hours of work; designs that state none are left out."),
                ("maxCost", "The most money still to spend; designs that cannot be finished are left out."),
                ("limit", "How many places, 1 to 2000; 10 if left out."), ("budgetMs", "Time to rank in milliseconds, 100 to 300000; 30000 if left out."),
            ],
        },

        new("GET", "/v1/price-lists", "listPriceLists", "All price lists."),
        new("POST", "/v1/price-lists", "storePriceList", "Replaces all offers of the supplier that the list names.")
        {
            Body = typeof(PriceListEntry),
            Example = Examples.PriceList,
            Document = Examples.PriceListDocument,
        },
        new("GET", "/v1/price-lists/{supplier}", "getPriceList", "A supplier's price list."),
        new("PUT", "/v1/price-lists/{supplier}", "replacePriceList", "Replaces all offers of a supplier.")
        {
            Body = typeof(PriceListEntry),
            Example = Examples.PriceList,
            Document = Examples.PriceListDocument,
        },
        new("DELETE", "/v1/price-lists/{supplier}", "deletePriceList", "Forgets a supplier's offers."),
        new("GET", "/v1/offers", "listOffers", "One page of offers.")
        {
            Query =
            [
                ("supplier", "Supplier as paths name it."), ("species", "Species id."), ("kind", "solid or sheet."),
                ("minThicknessMm", "Least thickness in millimetres."), ("maxThicknessMm", "Greatest thickness in millimetres."), .. Paging,
            ],
        },

        new("GET", "/v1/queue", "getQueue", "The builds that wait, the most important first. One whose accepted plan is built is left out, until its closing is taken back."),
        new("POST", "/v1/queue", "addToQueue", "Adds a build to the queue; the queue as it is then.") { Body = typeof(QueueEntry), Example = Examples.QueueEntry },
        new("POST", "/v1/queue/{id}/moves", "moveInQueue", "Moves a build to another place in the queue.") { Body = typeof(QueueMove), Example = """{"position":1}""" },
        new("DELETE", "/v1/queue/{id}", "removeFromQueue", "Takes a build out of the queue."),

        new("POST", "/v1/plans", "createPlan", "Asks for a plan of one design, or with designs of several together (the queue's, say, in its order); or with from for one that starts from an earlier plan, keeps what it can of that and says what has changed; with without for one that leaves out what a yard does not have. A design that leaves something open is planned with the values in with and the answers in choose. Send Prefer: wait=N to wait up to N seconds for it; else ask again at the Location.")
        {
            Body = typeof(PlanRequest),
            Example = Examples.Plan,
        },
        new("GET", "/v1/plans", "listPlans", "One page of planning runs, newest first.")
        {
            Query = [("state", "queued, planning, done, cancelled, failed or interrupted."), ("design", "Reference of a stored design."), ("purpose", "build, or what-if for plans that only tell what would be."), .. Paging],
        },
        new("GET", "/v1/plans/{id}", "getPlan", "One planning run: its state, its progress and its plan."),
        new("POST", "/v1/plans/{id}/cancellation", "cancelPlan", "Ends a run early; the best plan so far is kept."),
        new("POST", "/v1/plans/{id}/acceptance", "acceptPlan", "Accepts a plan: it takes the boards that it cuts, all or none."),
        new("POST", "/v1/plans/{id}/release", "releasePlan", "A plan gives back the boards that it has not cut."),
        new("POST", "/v1/plans/{id}/closings", "closeBoards", "Says that boards of an accepted plan are cut: they are used, and their leftovers are logged.")
        {
            Body = typeof(ClosingEntry),
            Example = Examples.Closing,
        },
        new("GET", "/v1/plans/{id}/problem", "getPlanProblem", "All that the plan was made from; may be sent back as the inline of a new request."),
        new("GET", "/v1/plans/{id}/shopping", "getShopping", "What to buy for a plan: a list for each supplier in the words of the counter, with totals."),
        new("GET", "/v1/plans/{id}/worth-having", "getWorthHaving", "What one more offcut would save of what the plan spends, by size; each is planned for again, so the answer takes as long as budgetMs.")
        {
            Query = [("budgetMs", "Time allowed in milliseconds, 500 to 20000; 6000 if left out.")],
        },
        new("GET", "/v1/plans/{id}/cut-sheet", "getCutSheet", "The printable cut sheet, one self-contained HTML page."),
        new("GET", "/v1/plans/{id}/diagrams/{number}", "getDiagram", "The cutting diagram of one board of the plan, SVG."),

        new("POST", "/v1/stretches", "stretch", "Which value of a design's parameter is the largest (or smallest, or nearest to a wish) that needs no wood to be bought, or stays within the money; what its neighbours cost. With Accept: text/event-stream as events while it goes: progress, then end or fault. Closing the connection ends it.")
        {
            Body = typeof(StretchRequest),
            Example = Examples.Stretch,
        },
        new("POST", "/v1/fills", "fill", "How many copies of a design the free stock yields without a purchase. With Accept: text/event-stream as events while it goes: progress, then end or fault. Closing the connection ends it.") { Body = typeof(FillRequest), Example = Examples.Fill },
        new("POST", "/v1/mixes", "mix", "Which mix of several designs puts most of the free stock, by its worth, into builds without a purchase of wood: how many copies of each, what is cut for them, and what comes back. With Accept: text/event-stream as events while it goes: progress, then end or fault. Closing the connection ends it.") { Body = typeof(MixRequest), Example = Examples.Mix },

        new("GET", "/v1/reports/builds", "listBuildYields", "The yield of each build, the share of its parts from the rack, and the money not spent.") { Query = Paging },
        new("GET", "/v1/reports/pile", "getPile", "The wood on the rack over time."),
        new("GET", "/v1/reports/pile/chart", "getPileChart", "The wood on the rack over time as a chart, SVG."),
    ];
}
