using Offcuts.Contracts;

namespace Offcuts.Cli;

/// <summary>A problem that the server tells when its answer has begun already.</summary>
internal sealed class ProblemException(Problem problem) : Exception(problem.Detail)
{
    /// <summary>The same as in a refused request's answer.</summary>
    public Problem Problem => problem;
}
