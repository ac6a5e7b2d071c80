using System.Globalization;

namespace Offcuts.Domain;

/// <summary>
/// Several builds as one design whose parts are kept apart: each name begins with the build's own, <c>Tea tray: Base</c>, and so do finish groups and items.
/// </summary>
public static class JointDesign
{
    /// <summary>Most builds that are planned together.</summary>
    public const int MaxBuilds = 8;
    private const string Mark = ": ";
    private const int LongestBuild = 24;

    /// <summary>The joint design and the names of its builds, in the order of the designs.</summary>
    /// <param name="designs">The designs, the most important first.</param>
    public static (Design Design, IReadOnlyList<string> Builds) Of(IReadOnlyList<Design> designs)
    {
        var builds = new List<string>();
        foreach (var design in designs)
        {
            var name = design.Name.Replace(':', ' ').Trim();
            builds.Add(Free(name.Length > LongestBuild ? name[..LongestBuild].TrimEnd() : name, LongestBuild + 4, builds));
        }

        var own = designs.Zip(builds, Named).ToList();
        var joined = string.Join(" + ", builds);
        return (new Design
        {
            Name = joined.Length <= Limits.MaxName ? joined : string.Create(CultureInfo.InvariantCulture, $"{builds.Count} builds together"),
            Parts = [.. own.SelectMany(design => design.Parts)],
            Panels = [.. own.SelectMany(design => design.Panels)],
            Groups = [.. own.SelectMany(design => design.Groups)],
            Items = [.. own.SelectMany(design => design.Items)],
        }, builds);
    }

    /// <summary>Whether a part, panel, group or item is of a build.</summary>
    public static bool IsOf(string name, string build) => name.StartsWith(build + Mark, StringComparison.Ordinal);

    /// <summary>The name without the build's.</summary>
    public static string Within(string name, string build) => IsOf(name, build) ? name[(build.Length + Mark.Length)..] : name;

    /// <summary>One build of a joint design, its names as they are there.</summary>
    public static Design Only(Design joint, string build) => new()
    {
        Name = build,
        Parts = [.. joint.Parts.Where(part => IsOf(part.Name, build))],
        Panels = [.. joint.Panels.Where(panel => IsOf(panel.Name, build))],
        Groups = [.. joint.Groups.Where(group => IsOf(group.Name, build))],
        Items = [.. joint.Items.Where(item => IsOf(item.Name, build))],
    };

    private static Design Named(Design design, string build)
    {
        var given = new List<string>();
        var groups = design.Groups.ToDictionary(group => group.Name, group => Name(group.Name), StringComparer.Ordinal);
        given.Clear();
        return design with
        {
            Groups = [.. design.Groups.Select(group => group with { Name = groups[group.Name] })],
            Parts = [.. design.Parts.Select(part => part with { Name = Name(part.Name), Group = part.Group is { } group ? groups[group] : null })],
            Panels = [.. design.Panels.Select(panel => panel with { Name = Name(panel.Name), Group = panel.Group is { } group ? groups[group] : null })],
            Items = [.. design.Items.Select(item => item with { Name = Fit(build + Mark + item.Name, Limits.MaxName) })],
        };

        string Name(string name)
        {
            given.Add(Free(build + Mark + name, Limits.MaxName, given));
            return given[^1];
        }
    }

    private static string Fit(string name, int longest) => name.Length <= longest ? name : name[..longest].TrimEnd();

    /// <summary>The name, cut to its longest, with a number if it is taken.</summary>
    private static string Free(string name, int longest, List<string> taken)
    {
        var free = Fit(name, longest);
        for (var number = 2; taken.Contains(free); number++)
        {
            var mark = string.Create(CultureInfo.InvariantCulture, $" {number}");
            free = Fit(name, longest - mark.Length) + mark;
        }

        return free;
    }
}
