using System.Globalization;
using Offcuts.Benchmarks;

switch (args)
{
    case [] or ["shops"]:
        ShopTable.Print(Console.Out);
        return 0;
    case ["must-buy"]:
        RivalTable.Print(50, TimeSpan.FromSeconds(2), Console.Out);
        return 0;
    case [("classes" or "replan") and var name, .. var rest] when rest.Length <= 3:
        Action<IReadOnlyList<int>, TimeSpan, string?, TextWriter> print = name == "classes" ? ClassTable.Print : ReplanTable.Print;
        print(
            Seeds(rest.Length > 0 ? rest[0] : "10"),
            TimeSpan.FromSeconds(rest.Length > 1 ? double.Parse(rest[1], CultureInfo.InvariantCulture) : 10),
            rest.ElementAtOrDefault(2), Console.Out);
        return 0;
    case ["queue", .. var rest] when rest.Length <= 2:
        QueueTable.Print(
            rest.Length > 0 ? int.Parse(rest[0], CultureInfo.InvariantCulture) : 50,
            TimeSpan.FromSeconds(rest.Length > 1 ? double.Parse(rest[1], CultureInfo.InvariantCulture) : 4), Console.Out);
        return 0;
    case ["growth", .. var rest] when rest.Length <= 1:
        GrowthTable.Print(
            rest.Length > 0 ? int.Parse(rest[0], CultureInfo.InvariantCulture) : 4, TimeSpan.FromSeconds(20), Console.Out);
        return 0;
    case ["published" or "published-kerf", var folder, .. var rest] when Directory.Exists(folder) && rest.Length <= 1:
        PublishedTable.Print(
            folder, TimeSpan.FromSeconds(rest.Length > 0 ? double.Parse(rest[0], CultureInfo.InvariantCulture) : 10), args[0] == "published-kerf", Console.Out);
        return 0;
    case ["knapsacks" or "knapsacks-kerf", var folder] when Directory.Exists(folder):
        KnapsackTable.Print(folder, args[0] == "knapsacks-kerf", Console.Out);
        return 0;
    case ["fit", .. var rest] when rest.Length <= 3:
        FitTable.Print(
            rest.Length > 0 ? int.Parse(rest[0], CultureInfo.InvariantCulture) : 200, rest.Length > 1 ? int.Parse(rest[1], CultureInfo.InvariantCulture) : 500,
            rest.ElementAtOrDefault(2) == "in-full", Console.Out);
        return 0;
    case ["stretch", var folder, .. var rest] when Directory.Exists(folder) && rest.Length <= 2:
        StretchTable.Print(
            folder, TimeSpan.FromSeconds(rest.Length > 0 ? double.Parse(rest[0], CultureInfo.InvariantCulture) : 10),
            TimeSpan.FromSeconds(rest.Length > 1 ? double.Parse(rest[1], CultureInfo.InvariantCulture) : 0), Console.Out);
        return 0;
    case ["table", var demo, .. var rest] when Directory.Exists(demo) && rest.Length <= 3 && (rest.Length == 0 || Directory.Exists(rest[0])):
        Overview(demo, rest).Print(Console.Out);
        return 0;
    case ["row", var name, var demo, .. var rest] when rest.Length == 3:
        Overview(demo, rest).PrintRow(name, Console.Out);
        return 0;
    case ["startup"]:
        StartUp.Publish(["--self-contained", "false"], Console.Out);
        return 0;
    case ["startup", "self-contained"]:
        StartUp.Publish(["--self-contained", "-p:PublishReadyToRunComposite=true"], Console.Out);
        return 0;
    case ["startup", var offcuts, var hello] when File.Exists(offcuts) && File.Exists(hello):
        StartUp.Compare(offcuts, hello, Console.Out);
        return 0;
    default:
        await Console.Error.WriteLineAsync(
            """
            Usage: Offcuts.Benchmarks [table DEMO [FOLDER [MOST [SECONDS]]] | shops | must-buy | classes [SHOPS | FIRST..LAST [SECONDS [NAME]]] | replan [SHOPS | FIRST..LAST [SECONDS [NAME]]] | queue [SHOPS [SECONDS]] | growth [SHOPS] | fit [DESIGNS [BOARDS [in-full]]] | knapsacks FOLDER | knapsacks-kerf FOLDER | published FOLDER [SECONDS] | published-kerf FOLDER [SECONDS] | stretch DEMO [SECONDS [SECONDS]] | startup [self-contained | OFFCUTS HELLO]]
            FOLDER holds problems as JSON files, DEMO is db/demo. OFFCUTS and HELLO are two programs; without them both are published with the same options.
            """);
        return 2;
}

// So many shops, or those from one seed to another.
static IReadOnlyList<int> Seeds(string text)
{
    var ends = text.Split("..").Select(end => int.Parse(end, CultureInfo.InvariantCulture)).ToList();
    var first = ends.Count > 1 ? ends[0] : 1;
    return [.. Enumerable.Range(first, ends[^1] - first + 1)];
}

static OverviewTable Overview(string demo, string[] rest) => new(
    demo, rest.Length > 0 && rest[0] != "-" ? rest[0] : null,
    rest.Length > 1 ? int.Parse(rest[1], CultureInfo.InvariantCulture) : 5,
    TimeSpan.FromSeconds(rest.Length > 2 ? double.Parse(rest[2], CultureInfo.InvariantCulture) : 10));
