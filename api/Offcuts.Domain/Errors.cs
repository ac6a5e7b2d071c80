namespace Offcuts.Domain;

/// <summary>What kind of fault an <see cref="OffcutsException"/> reports. Each maps to one problem type and one exit code.</summary>
public enum ErrorCode
{
    /// <summary>Input that cannot be right: a size, a name, a document.</summary>
    Invalid,

    /// <summary>Something that does not exist.</summary>
    NotFound,

    /// <summary>Something that contradicts what is stored.</summary>
    Conflict,

    /// <summary>Stored data that cannot be right.</summary>
    DataIntegrity,
}

/// <summary>One thing that is wrong with an input.</summary>
/// <param name="Pointer">Where: a JSON pointer as a URI fragment, for instance <c>#/parts/2/size</c>, or <c>#</c> for the whole.</param>
/// <param name="Detail">What is wrong and how to mend it.</param>
/// <param name="Line">Line of the text document, from 1, if it was one.</param>
/// <param name="Column">Column in that line, from 1, where known.</param>
public sealed record InputFault(string Pointer, string Detail, int? Line = null, int? Column = null);

/// <summary>A fault to be told to the user.</summary>
public sealed class OffcutsException : Exception
{
    /// <summary>A fault with a message that says what is wrong and how to mend it.</summary>
    public OffcutsException(ErrorCode code, string message, params IReadOnlyList<InputFault> faults)
        : base(message)
    {
        Code = code;
        Faults = faults;
    }

    /// <summary>What kind of fault it is.</summary>
    public ErrorCode Code { get; }

    /// <summary>Where in the input it is, for invalid input.</summary>
    public IReadOnlyList<InputFault> Faults { get; }
}
