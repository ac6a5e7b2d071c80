using System.Reflection;
using System.Runtime.CompilerServices;
using Offcuts.Domain;
using Offcuts.Planning;
using Xunit;

namespace Offcuts.Auditing.Tests;

/// <summary>The house of DEVELOPERS.md, as the compiled assemblies and the project files show it.</summary>
public class ArchitectureTests
{
    [Fact]
    public void The_domain_references_the_platform_only() =>
        Assert.All(References(typeof(Plan).Assembly), name => Assert.StartsWith("System.", name, StringComparison.Ordinal));

    [Fact]
    public void The_auditor_knows_the_domain_only() => Assert.All(
        References(typeof(Auditor).Assembly),
        name => Assert.True(name == "Offcuts.Domain" || name.StartsWith("System.", StringComparison.Ordinal), name));

    [Fact]
    public void The_planner_knows_the_domain_and_the_solver_but_not_the_auditor()
    {
        var ours = References(typeof(Planner).Assembly).Where(name => name.StartsWith("Offcuts.", StringComparison.Ordinal));
        Assert.Equal(["Offcuts.Domain"], ours);
        Assert.Contains("Google.OrTools", References(typeof(Planner).Assembly));
    }

    [Theory]
    [InlineData("Google.OrTools", "Offcuts.Planning")]
    [InlineData("Microsoft.Data.Sqlite", "Offcuts.Storage")]
    public void Only_one_project_of_the_product_asks_for_the_package(string package, string owner) => Assert.Equal(
        [owner],
        Directory.GetFiles(Root(), "*.csproj", SearchOption.AllDirectories)
            .Where(path => path.StartsWith(Path.Combine(Root(), "api"), StringComparison.Ordinal) || path.StartsWith(Path.Combine(Root(), "cli"), StringComparison.Ordinal))
            .Where(path => File.ReadAllText(path).Contains($"\"{package}\"", StringComparison.Ordinal))
            .Select(Path.GetFileNameWithoutExtension));

    [Fact]
    public void Only_the_start_of_the_server_writes_to_the_console() => Assert.DoesNotContain(
        Directory.GetFiles(Path.Combine(Root(), "api"), "*.cs", SearchOption.AllDirectories)
            .Where(path => !path.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal))
            // A server that cannot start has nowhere else to say so.
            .Where(path => Path.GetFileName(path) != "Program.cs"),
        path => File.ReadLines(path).Any(line => line.Contains("Console.", StringComparison.Ordinal)));

    private static IEnumerable<string> References(Assembly assembly) => assembly.GetReferencedAssemblies().Select(name => name.Name!);

    private static string Root([CallerFilePath] string here = "") => Path.GetFullPath(Path.Combine(Path.GetDirectoryName(here)!, "..", ".."));
}
