namespace Offcuts.Auditing;

/// <summary>Collects what is wrong.</summary>
internal sealed class Findings
{
    private readonly List<AuditFinding> all = [];

    public IReadOnlyList<AuditFinding> All => all;

    public void Add(AuditRule rule, FormattableString detail) => all.Add(new AuditFinding(rule, FormattableString.Invariant(detail)));

    /// <summary>Adds the finding if the rule is not kept.</summary>
    public void Require(bool kept, AuditRule rule, FormattableString detail)
    {
        if (!kept)
        {
            Add(rule, detail);
        }
    }
}
