using Offcuts.Domain;

namespace Offcuts.Auditing;

/// <summary>The plan under audit and what was found.</summary>
internal sealed class AuditSheet(PlanningProblem problem, Plan plan)
{
    private readonly List<AuditFinding> findings = [];

    public PlanningProblem Problem => problem;

    public Plan Plan => plan;

    public Shop Shop => problem.Shop;

    public IReadOnlyList<AuditFinding> Findings => findings;

    public void Find(AuditRule rule, FormattableString detail) => findings.Add(new AuditFinding(rule, FormattableString.Invariant(detail)));

    public void Find(AuditRule rule, string detail) => findings.Add(new AuditFinding(rule, detail));

    public void Require(bool holds, AuditRule rule, FormattableString detail)
    {
        if (!holds)
        {
            Find(rule, detail);
        }
    }

    public Part? PartNamed(string name) => problem.Design.Parts.FirstOrDefault(part => part.Name == name);

    public Panel? PanelNamed(string name) => problem.Design.Panels.FirstOrDefault(panel => panel.Name == name);
}
