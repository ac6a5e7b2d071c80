using Offcuts.Domain;
using Offcuts.Planning;

namespace Offcuts.Host;

/// <summary>How the Web API is hosted.</summary>
public sealed record HostSettings
{
    /// <summary>The SQLite file; made if it does not exist.</summary>
    public required string DatabasePath { get; init; }

    /// <summary>Addresses to listen on, separated by semicolons; the service in the client's process listens nowhere.</summary>
    public string Urls { get; init; } = "http://127.0.0.1:5080";

    /// <summary>Whether addresses that other machines can reach are allowed. There are no access tokens yet.</summary>
    public bool AllowNonLoopback { get; init; }

    /// <summary>Whether to serve the OpenAPI document and the page to browse it; a client that hosts the service for itself needs neither.</summary>
    public bool ServeReference { get; init; }

    /// <summary>How many plans may wait or be made at once; a further one is refused.</summary>
    public int PlanQueueLength { get; init; } = 16;

    /// <summary>How long a request that keeps the processors busy waits for its turn; then it is refused.</summary>
    public TimeSpan HeavyPatience { get; init; } = TimeSpan.FromSeconds(5);

    /// <summary>Makes the plans; null for the product's planner. Tests give another.</summary>
    public Solving? Solve { get; init; }

    /// <summary>Checks every plan; null for the product's auditor. Tests give another.</summary>
    public AuditPlan? Audit { get; init; }
}

/// <summary>Checks a plan; see <see cref="Auditing.Auditor.Audit"/>.</summary>
public delegate IReadOnlyList<Auditing.AuditFinding> AuditPlan(PlanningProblem problem, Plan plan);
