using Dapper;
using Offcuts.Domain;

namespace Offcuts.Storage;

/// <summary>The shop, what it keeps and the species that it adds, as JSON in the shape of the wire.</summary>
/// <param name="database">Where they are kept.</param>
public sealed class ShopStore(Database database)
{
    /// <summary>The shop; null as long as none was stored.</summary>
    public string? FindShop()
    {
        using var connection = database.Connect();
        return connection.QuerySingleOrDefault<string>("SELECT content FROM shop");
    }

    /// <summary>Replaces the shop.</summary>
    public void ReplaceShop(string content)
    {
        using var connection = database.Connect();
        connection.Execute(
            "INSERT INTO shop (only_row, content) VALUES (1, @Content) ON CONFLICT DO UPDATE SET content = excluded.content",
            new { Content = content });
    }

    /// <summary>What the shop keeps; null as long as no rule was stored.</summary>
    public string? FindKeepRule()
    {
        using var connection = database.Connect();
        return connection.QuerySingleOrDefault<string>("SELECT content FROM keep_rule");
    }

    /// <summary>Replaces what the shop keeps.</summary>
    public void ReplaceKeepRule(string content)
    {
        using var connection = database.Connect();
        connection.Execute(
            "INSERT INTO keep_rule (only_row, content) VALUES (1, @Content) ON CONFLICT DO UPDATE SET content = excluded.content",
            new { Content = content });
    }

    /// <summary>The shop's own species, oldest first.</summary>
    public IReadOnlyList<string> ListSpecies()
    {
        using var connection = database.Connect();
        return connection.Query<string>("SELECT content FROM species ORDER BY sequence").AsList();
    }

    /// <summary>Adds a species.</summary>
    /// <exception cref="OffcutsException">There is one with this id.</exception>
    public void AddSpecies(string id, string content)
    {
        using var connection = database.Connect();
        var added = connection.Execute(
            "INSERT INTO species (id, content) VALUES (@Id, @Content) ON CONFLICT DO NOTHING", new { Id = id, Content = content });
        if (added == 0)
        {
            throw new OffcutsException(ErrorCode.Conflict, $"There is a species '{id}' already: choose another id.");
        }
    }
}
