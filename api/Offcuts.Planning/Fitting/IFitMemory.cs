using Offcuts.Domain;

namespace Offcuts.Planning.Fitting;

/// <summary>What is remembered of earlier rankings. It is asked from several threads.</summary>
public interface IFitMemory
{
    /// <summary>What a design came to when all was as it is now; null if that is not known.</summary>
    /// <param name="reach">The design with what it can touch.</param>
    /// <param name="mayBeNew">The part of its boards that may be new while nothing is cheaper (see <see cref="SeenStock.StillServes"/>).</param>
    FitOutcome? Recall(DesignReach reach, double mayBeNew);

    /// <summary>Remembers what a design came to.</summary>
    void Keep(DesignReach reach, FitOutcome outcome);
}
