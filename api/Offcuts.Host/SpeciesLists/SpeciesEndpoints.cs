using System.Text.Json;
using Microsoft.AspNetCore.Http.HttpResults;
using Offcuts.Contracts;
using Offcuts.Domain;
using Offcuts.Host.Http;
using Offcuts.Host.Shops;
using Offcuts.Storage;

namespace Offcuts.Host.SpeciesLists;

/// <summary><c>/v1/species</c>.</summary>
internal static class SpeciesEndpoints
{
    private const int MaxNames = 20;

    public static void MapSpecies(this IEndpointRouteBuilder app)
    {
        app.MapMethods("/v1/species", ["GET", "HEAD"], List);
        app.MapPost("/v1/species", CreateAsync);
    }

    private static Ok<SpeciesList> List(Workshop workshop)
    {
        var own = workshop.Own().Select(entry => entry.Id).ToHashSet(StringComparer.Ordinal);
        return TypedResults.Ok(new SpeciesList(
            [.. workshop.Catalogue().All.Select(species => SpeciesMapping.ToRecord(species, own.Contains(species.Id)))]));
    }

    private static async Task<Created<SpeciesRecord>> CreateAsync(
        HttpRequest request, Workshop workshop, ShopStore store, CancellationToken cancellationToken)
    {
        var entry = await RequestBody.ReadAsync(request, WireJson.Default.SpeciesEntry, cancellationToken);
        Check(entry);
        if (workshop.Catalogue().Find(entry.Id) is { } known)
        {
            throw new OffcutsException(ErrorCode.Conflict, $"'{entry.Id}' is {known.Name} already: choose another id.");
        }

        store.AddSpecies(entry.Id, JsonSerializer.Serialize(entry, WireJson.Default.SpeciesEntry));
        return TypedResults.Created("/v1/species", SpeciesMapping.ToRecord(SpeciesMapping.ToSpecies(entry), own: true));
    }

    private static void Check(SpeciesEntry entry)
    {
        var faults = new Faults();
        if (entry.Id.Length > 80 || entry.Id.Length == 0 || entry.Id != Slug.Of(entry.Id))
        {
            faults.Add("#/id", $"'{entry.Id}' is no id: give lower-case words with hyphens, at most 80 characters, for instance osage-orange.");
        }

        faults.Text("#/name", entry.Name, 80, required: true);
        faults.Text("#/source", entry.Source, 200);
        foreach (var (member, words) in new[] { ("aliases", entry.Aliases), ("classes", entry.Classes) })
        {
            foreach (var (index, word) in faults.Entries($"#/{member}", words, MaxNames))
            {
                faults.Text($"#/{member}/{index}", word, 80, required: true);
            }
        }

        // A wood's specific gravity lies between balsa's 0.1 and about 1.3; a coefficient is a few thousandths.
        Within("specificGravity", entry.SpecificGravity, 2m);
        Within("radialCoefficient", entry.RadialCoefficient, 0.1m);
        Within("tangentialCoefficient", entry.TangentialCoefficient, 0.1m);
        Within("radialShrinkage", entry.RadialShrinkage, 50m);
        Within("tangentialShrinkage", entry.TangentialShrinkage, 50m);
        faults.ThrowIfAny();

        void Within(string member, decimal? value, decimal most)
        {
            if (value <= 0 || value > most)
            {
                faults.Add($"#/{member}", string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{value}: give more than 0 and at most {most}, or leave it out."));
            }
        }
    }
}
