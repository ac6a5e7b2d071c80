namespace Offcuts.Auditing;

/// <summary>One thing that is wrong with a plan.</summary>
/// <param name="Rule">The rule that is broken.</param>
/// <param name="Detail">Where and by how much, with sizes in millimetres.</param>
public sealed record AuditFinding(AuditRule Rule, string Detail);
