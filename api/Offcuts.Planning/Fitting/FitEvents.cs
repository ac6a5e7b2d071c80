using Offcuts.Domain;

namespace Offcuts.Planning.Fitting;

/// <summary>Something that a ranking has to tell while it runs.</summary>
public abstract record FitEvent;

/// <summary>How far it is.</summary>
/// <param name="Designs">Designs to rank.</param>
/// <param name="LookedAt">Of those, how many are looked at so far: remembered, or judged by areas.</param>
/// <param name="Remembered">Of those, how many were planned before and need no plan now.</param>
/// <param name="Planned">Plans made.</param>
public sealed record FitProgress(int Designs, int LookedAt, int Remembered, int Planned) : FitEvent;

/// <summary>A design has its place: nothing that is not placed yet can come before it.</summary>
/// <param name="Number">The place, from 1.</param>
/// <param name="Design">The design.</param>
/// <param name="Outcome">What a plan of it comes to. Reasons for what is missing are given from all there is.</param>
/// <param name="Figures">What it is ranked by.</param>
/// <param name="IsSure">
/// Whether the place is by a careful plan: a thorough one, or one that is proved to cost the least and, where the pile counts, was made with care for which boards are cut. Else it
/// is by a quick one, and near ties may be the other way round.
/// </param>
public sealed record FitPlace(int Number, SavedDesign Design, FitOutcome Outcome, FitFigures Figures, bool IsSure) : FitEvent;

/// <summary>How a ranking ended.</summary>
/// <param name="Progress">How far it came.</param>
/// <param name="Filtered">Designs left out by their tags or hours.</param>
/// <param name="TooDear">Designs left out because they would cost more than allowed, or cannot be finished at all.</param>
/// <param name="EatNone">Designs left out because they take nothing of the part of the pile that was asked for.</param>
/// <param name="Failed">References of designs that could not be planned.</param>
/// <param name="IsFinished">Whether it came to its end before time was up; else places may be missing.</param>
public sealed record FitSummary(FitProgress Progress, int Filtered, int TooDear, int EatNone, IReadOnlyList<string> Failed, bool IsFinished) : FitEvent;
