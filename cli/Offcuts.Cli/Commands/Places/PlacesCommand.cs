using System.CommandLine;
using System.Net;
using Offcuts.Cli.Connections;
using Offcuts.Contracts;
using Offcuts.Domain;
using Refit;

namespace Offcuts.Cli.Commands.Places;

/// <summary><c>offcuts places</c>.</summary>
internal static class PlacesCommand
{
    private static readonly Argument<string> Name = new("PLACE") { Description = "The place, as boards have it" };
    private static readonly Option<string> Reach = new("--reach")
    {
        Description = "How hard it is to get at what lies there: easy, behind (some boards must be moved first), buried (the whole stack)",
        HelpName = "WORD",
        CompletionSources = { "easy", "behind", "buried" },
    };

    private static readonly Option<string> Limit = new("--limit") { Description = "How much wood it is to hold at most, for instance \"60 bd ft\" or 0.2m3; none for no limit", HelpName = "VOLUME" };
    private static readonly Option<string> Note = new("--note") { Description = "Anything else worth remembering", HelpName = "TEXT" };

    public static Verb Create() => new Verb(
        "places", "Where boards lie, and how hard they are to get at", "offcuts places list", "offcuts places set \"rack 2\" --reach behind")
        .With(
            new Verb("list", "List the places: those that boards name and those that were set", "offcuts places list").Does(ListAsync),
            new Verb("show", "Show a place", "offcuts places show \"rack 2\"").With(Name).Does(ShowAsync),
            new Verb(
                "set", "Say how hard it is to get at a place, which plans heed but for no money, and how much it is to hold; what is not named stays as it is",
                "offcuts places set \"rack 2\" --reach behind",
                "offcuts places set \"offcut bin\" --limit \"40 bd ft\" --note \"left of the saw\"",
                "offcuts places set loft --reach buried --limit 0.2m3")
                .With(Name, Reach, Limit, Note).Begins().Does(SetAsync),
            new Verb("remove", "Forget what was said of a place; boards that lie there stay", "offcuts places remove \"rack 2\"").With(Name).Does(RemoveAsync));

    private static async Task<int> ListAsync(Run run)
    {
        var places = await (await run.ConnectAsync()).ListPlacesAsync(run.Cancellation);
        if (run.Json)
        {
            run.WriteJson(places, ClientJson.Default.PlaceList);
        }
        else if (places.Items.Count > 0)
        {
            PlaceView.WriteTable(places.Items, await run.UnitAsync(), run.Terminal);
        }
        else
        {
            run.Say("No board names a place. Say where one lies with 'offcuts boards edit ID --place PLACE'.");
        }

        return ExitCode.Ok;
    }

    private static async Task<int> ShowAsync(Run run) =>
        await WriteAsync(run, await (await run.ConnectAsync()).GetPlaceAsync(run.Get(Name), run.Cancellation));

    private static async Task<int> SetAsync(Run run)
    {
        if (run.Get(Reach) is null && run.Get(Limit) is null && run.Get(Note) is null)
        {
            throw CliException.Usage("Nothing to set: give --reach, --limit or --note.");
        }

        var api = await run.ConnectAsync();
        var unit = await run.UnitAsync();
        var old = await FindAsync(api, run) ?? new PlaceEntry();
        var place = await api.ReplacePlaceAsync(
            run.Get(Name),
            new PlaceEntry(run.Get(Reach) ?? old.Reach, run.Get(Limit) is { } limit ? Volume(limit, unit) : old.LimitM3, run.Get(Note) ?? old.Note),
            run.Cancellation);
        if (place.Boards == 0)
        {
            run.Say($"No board lies at '{place.Name}'. Boards name their place exactly so: see 'offcuts places list'.");
        }

        return await WriteAsync(run, place);
    }

    private static async Task<int> RemoveAsync(Run run)
    {
        await (await run.ConnectAsync()).DeletePlaceAsync(run.Get(Name), run.Cancellation);
        return ExitCode.Ok;
    }

    private static async Task<PlaceEntry?> FindAsync(IOffcutsApi api, Run run)
    {
        try
        {
            var known = await api.GetPlaceAsync(run.Get(Name), run.Cancellation);
            return new PlaceEntry(known.Reach, known.LimitM3, known.Note);
        }
        catch (ApiException refused) when (refused.StatusCode == HttpStatusCode.NotFound)
        {
            // Nothing was said of it yet.
            return null;
        }
    }

    private static decimal? Volume(string text, DisplayUnit unit) => text == "none" ? null
        : VolumeReading.TryParse(text, unit, out var volume, out var error) ? volume
        : throw CliException.Invalid($"{Limit.Name}: {error}");

    private static async Task<int> WriteAsync(Run run, PlaceRecord place)
    {
        if (run.Json)
        {
            run.WriteJson(place, ClientJson.Default.PlaceRecord);
        }
        else
        {
            PlaceView.WriteDetails(place, await run.UnitAsync(), run.Terminal);
        }

        return ExitCode.Ok;
    }
}
