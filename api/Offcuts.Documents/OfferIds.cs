using System.Globalization;
using Offcuts.Domain;

namespace Offcuts.Documents;

/// <summary>Gives the offers of one list their ids, <c>supplier/offer</c>: the same list always gets the same.</summary>
/// <param name="supplier">The supplier's name.</param>
internal sealed class OfferIds(string supplier)
{
    private readonly HashSet<string> given = new(StringComparer.Ordinal);

    /// <summary>The id of the next offer, made of what it is called; a name that came before gets a number.</summary>
    public string Next(string name)
    {
        var slug = Slug.Of(name);
        var id = $"{Slug.Of(supplier)}/{(slug.Length == 0 ? "offer" : slug)}";
        var numbered = id;
        for (var number = 2; !given.Add(numbered); number++)
        {
            numbered = string.Create(CultureInfo.InvariantCulture, $"{id}-{number}");
        }

        return numbered;
    }
}
