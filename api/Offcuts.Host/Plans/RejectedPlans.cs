using System.Text.Json;
using Offcuts.Auditing;
using Offcuts.Contracts;
using Offcuts.Domain;
using Offcuts.Host.Http;
using Offcuts.Storage;

namespace Offcuts.Host.Plans;

/// <summary>A plan that the auditor rejected, with what is needed to look into it.</summary>
internal sealed record Reproduction(InlineProblem Problem, PlanResult Plan, IReadOnlyList<FindingRecord> Findings);

/// <summary>One thing that is wrong with a plan.</summary>
internal sealed record FindingRecord(string Rule, string Detail);

/// <summary>The auditor rejected a plan: a fault of the product.</summary>
internal sealed class PlanRejectedException(string message, string reproduction) : Exception(message)
{
    /// <summary>Name of the file that reproduces it, relative to the data folder.</summary>
    public string Reproduction { get; } = reproduction;
}

/// <summary>Keeps rejected plans in the data folder, beside the database.</summary>
internal sealed class RejectedPlans(HostSettings settings)
{
    private const string Folder = "rejected-plans";

    /// <summary>Writes the reproduction and gives the fault to throw.</summary>
    public PlanRejectedException Keep(string id, PlanningProblem problem, Plan plan, IReadOnlyList<AuditFinding> findings)
    {
        var folder = Path.Combine(Path.GetDirectoryName(Path.GetFullPath(settings.DatabasePath))!, Folder);
        Directory.CreateDirectory(folder);
        var reproduction = new Reproduction(
            ProblemMapping.ToRecord(problem),
            ResultMapping.ToResult(plan, problem, SpeciesCatalogue.Default),
            [.. findings.Select(finding => new FindingRecord(Words.Of(finding.Rule), finding.Detail))]);
        File.WriteAllBytes(Path.Combine(folder, $"{id}.json"), JsonSerializer.SerializeToUtf8Bytes(reproduction, WireJson.Default.Reproduction));
        var first = findings[0];
        return new PlanRejectedException(
            $"The plan broke {findings.Count} of its rules and was thrown away; the first is {Words.Of(first.Rule)}: {first.Detail} This is a fault of the program: please report it with the reproduction, {Folder}/{id}.json in the data folder.",
            $"{Folder}/{id}.json");
    }
}
