namespace Offcuts.Cli;

/// <summary>Exit codes that scripts can rely on; <c>offcuts help exit-codes</c> tells the user.</summary>
internal static class ExitCode
{
    public const int Ok = 0;
    public const int Failed = 1;
    public const int Usage = 2;
    public const int Incomplete = 3;
    public const int Conflict = 5;
    public const int Unreachable = 6;
    public const int DataIntegrity = 7;

    /// <summary>The answer to <c>keep?</c> is no.</summary>
    public const int LetGo = 8;
    public const int Interrupted = 130;
    public const int Terminated = 143;

    /// <summary>The exit code for the code word of a problem; a word that this program does not know means failure.</summary>
    public static int Of(string code) => code switch
    {
        "usage" or "invalid" or "too-large" or "unsupported-media-type" => Usage,
        "conflict" => Conflict,
        "unreachable" => Unreachable,
        "data-integrity" => DataIntegrity,
        "interrupted" => Interrupted,
        "terminated" => Terminated,
        _ => Failed,
    };
}
