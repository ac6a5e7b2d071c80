using Offcuts.Contracts;
using Offcuts.Domain;

namespace Offcuts.Cli.Commands.Boards;

/// <summary>What the store knows of a species.</summary>
internal static class KnownSpecies
{
    /// <summary>The species with this id, name or alias; null if there is none, which the server then says.</summary>
    public static async Task<Domain.Species?> FindAsync(IOffcutsApi api, string name, CancellationToken cancellation)
    {
        var list = await api.ListSpeciesAsync(cancellation);
        return SpeciesCatalogue.Default.With(list.Items.Select(record => new Domain.Species
        {
            Id = record.Id,
            Name = record.Name,
            Aliases = record.Aliases,
            Classes = record.Classes,
        })).Find(name);
    }
}
