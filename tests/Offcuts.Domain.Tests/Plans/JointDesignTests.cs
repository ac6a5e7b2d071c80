using Xunit;

namespace Offcuts.Domain.Tests;

public class JointDesignTests
{
    [Fact]
    public void The_parts_groups_and_items_of_each_build_are_kept_apart()
    {
        var tray = new Design
        {
            Name = "Tea tray",
            Parts = [Part("base") with { Group = "show" }],
            Panels = [new Panel { Name = "top", Finished = Size, Group = "show" }],
            Groups = [new FinishGroup("show", true, [])],
            Items = [new BoughtItem("screw", 4, new Money(10))],
        };
        var (design, builds) = JointDesign.Of([tray, tray with { Items = [] }, new Design { Name = "Box: small", Parts = [Part("base")] }]);

        Assert.Equal(["Tea tray", "Tea tray 2", "Box  small"], builds);
        Assert.Equal("Tea tray + Tea tray 2 + Box  small", design.Name);
        Assert.Equal(["Tea tray: base", "Tea tray 2: base", "Box  small: base"], design.Parts.Select(part => part.Name));
        Assert.Equal(["Tea tray: show", "Tea tray 2: show", null], design.Parts.Select(part => part.Group));
        Assert.Empty(DesignRules.Check(design with { Parts = [.. design.Parts.Select(part => part with { Species = ["white-ash"] })], Groups = [.. design.Groups.Select(group => group with { Species = ["white-ash"] })] }));

        // No name is of two builds, though one begins with the other.
        Assert.True(JointDesign.IsOf("Tea tray 2: base", "Tea tray 2"));
        Assert.False(JointDesign.IsOf("Tea tray 2: base", "Tea tray"));
        var second = JointDesign.Only(design, "Tea tray 2");
        Assert.Equal(("Tea tray 2: top", "Tea tray 2: show", 0), (Assert.Single(second.Panels).Name, Assert.Single(second.Groups).Name, second.Items.Count));
        Assert.Equal("base", JointDesign.Within("Tea tray 2: base", "Tea tray 2"));
    }

    [Fact]
    public void Names_too_long_for_both_are_cut_and_stay_different()
    {
        var name = new string('x', Limits.MaxName);
        var (design, builds) = JointDesign.Of([
            new Design { Name = name, Parts = [Part(name[..79] + "a"), Part(name[..79] + "b")] },
            new Design { Name = name, Parts = [Part("p")] }]);
        Assert.Equal(2, builds.Distinct().Count());
        Assert.Equal(3, design.Parts.Select(part => part.Name).Distinct().Count());
        Assert.All(design.Parts, part => Assert.True(part.Name.Length <= Limits.MaxName && builds.Count(build => JointDesign.IsOf(part.Name, build)) == 1));
        Assert.True(design.Name.Length <= Limits.MaxName);
    }

    private static Dimensions Size => new(Length.FromInches(1), Length.FromInches(4), Length.FromInches(20));

    private static Part Part(string name) => new() { Name = name, Finished = Size };
}
