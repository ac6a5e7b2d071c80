using System.Diagnostics;
using System.Globalization;

namespace Offcuts.Benchmarks;

/// <summary>How long <c>offcuts boards list</c> takes from the embedded store, as a whole process, against a program that only says hello.</summary>
internal static class StartUp
{
    /// <summary>How often each program is run.</summary>
    public const int Runs = 15;

    private const string HelloProject = """
        <Project Sdk="Microsoft.NET.Sdk">
          <PropertyGroup>
            <OutputType>Exe</OutputType>
            <TargetFramework>net10.0</TargetFramework>
            <InvariantGlobalization>true</InvariantGlobalization>
            <PublishReadyToRun>true</PublishReadyToRun>
          </PropertyGroup>
        </Project>
        """;

    /// <summary>Publishes both programs with the same options and compares them.</summary>
    /// <param name="publish">Options of <c>dotnet publish</c> beyond those that both have.</param>
    /// <param name="output">Where the rows go.</param>
    public static void Publish(string[] publish, TextWriter output)
    {
        var folder = Directory.CreateTempSubdirectory("offcuts-startup-");
        try
        {
            var hello = folder.CreateSubdirectory("hello");
            File.WriteAllText(Path.Combine(hello.FullName, "hello.csproj"), HelloProject);
            File.WriteAllText(Path.Combine(hello.FullName, "Program.cs"), "System.Console.WriteLine(\"Hello, World!\");");
            Compare(Published(Path.Combine(Root(), "cli", "Offcuts.Cli"), "offcuts"), Published(hello.FullName, "hello"), output);

            string Published(string project, string name)
            {
                var place = Path.Combine(folder.FullName, "published-" + name);
                // In a folder of their own, because a composite image and a plain one must not share what is kept between builds.
                Run("dotnet", ["publish", project, "-c", "Release", "--use-current-runtime", "--artifacts-path", place + "-artifacts", "-v", "q", "--nologo", "-o", place, .. publish]);
                return Path.Combine(place, name);
            }
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    /// <summary>Compares two programs that are there, each run in turn with the other, so that a machine that slows down slows both.</summary>
    /// <param name="offcuts">The client.</param>
    /// <param name="hello">The other.</param>
    /// <param name="output">Where the rows go.</param>
    public static void Compare(string offcuts, string hello, TextWriter output)
    {
        var folder = Directory.CreateTempSubdirectory("offcuts-startup-");
        try
        {
            var store = Path.Combine(folder.FullName, "store");
            Run(offcuts, ["demo", "--keep", store]);
            string[] list = ["boards", "list", "--data", store];
            // One run of each to warm the disk's cache, uncounted.
            Run(offcuts, list);
            Run(hello, []);
            var pairs = Enumerable.Range(0, Runs).Select(_ => (Offcuts: Run(offcuts, list), Hello: Run(hello, []))).ToList();
            output.WriteLine($"{"ms wall",-20} {"min",8} {"median",8} {"max",8}");
            PrintRow(output, "offcuts boards list", [.. pairs.Select(pair => pair.Offcuts)]);
            PrintRow(output, "hello", [.. pairs.Select(pair => pair.Hello)]);
            var ratios = pairs.Select(pair => pair.Offcuts / pair.Hello).Order().ToList();
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{"ratio of a pair",-20} {ratios[0],8:0.00} {ratios[Runs / 2],8:0.00} {ratios[^1],8:0.00}"));
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static void PrintRow(TextWriter output, string name, List<TimeSpan> times)
    {
        times.Sort();
        output.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{name,-20} {times[0].TotalMilliseconds,8:0.0} {times[times.Count / 2].TotalMilliseconds,8:0.0} {times[^1].TotalMilliseconds,8:0.0}"));
    }

    private static TimeSpan Run(string program, string[] args)
    {
        var start = new ProcessStartInfo(program, args) { RedirectStandardOutput = true, RedirectStandardError = true };
        var watch = Stopwatch.StartNew();
        using var process = Process.Start(start)!;
        var error = process.StandardError.ReadToEndAsync();
        var said = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        var elapsed = watch.Elapsed;
        return process.ExitCode == 0
            ? elapsed
            : throw new InvalidOperationException($"{program} {string.Join(' ', args)} ended with {process.ExitCode}: {said}{error.Result}");
    }

    private static string Root()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "Offcuts.sln")))
            {
                return folder.FullName;
            }
        }

        throw new InvalidOperationException("The source is not above this program: give both programs instead.");
    }
}
