namespace Offcuts.Domain;

/// <summary>The state of a board's two ends.</summary>
/// <param name="Left">The end from which places on the board are measured.</param>
/// <param name="Right">The other end.</param>
public readonly record struct Ends(EndState Left, EndState Right)
{
    /// <summary>Both ends sawn and sound.</summary>
    public static Ends BothSound { get; } = new(EndState.Sound, EndState.Sound);
}

/// <summary>What is known of an end.</summary>
public enum EndState
{
    /// <summary>Nobody looked: rough stock may hide checks and grit there.</summary>
    Unknown,

    /// <summary>It has drying checks that must come off.</summary>
    Checked,

    /// <summary>Sawn into sound wood: nothing need come off.</summary>
    Sound,
}
