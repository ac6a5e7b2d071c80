namespace Offcuts.Cli.Help;

/// <summary>What a shell sources to complete <c>offcuts</c>. Each asks <c>offcuts complete</c>, which opens no store.</summary>
internal static class CompletionScripts
{
    /// <summary>Scripts by shell.</summary>
    public static readonly IReadOnlyDictionary<string, string> All = new Dictionary<string, string>(StringComparer.Ordinal)
    {
        ["bash"] = """
            _offcuts() {
                local IFS=$'\n'
                COMPREPLY=($("${COMP_WORDS[0]}" complete "$COMP_POINT" "$COMP_LINE" 2>/dev/null))
            }
            complete -o default -F _offcuts offcuts

            """,
        ["zsh"] = """
            #compdef offcuts
            _offcuts() {
                local -a found
                found=("${(@f)$("${words[1]}" complete "$CURSOR" "$BUFFER" 2>/dev/null)}")
                if [[ -n "$found" ]]; then compadd -a found; else _files; fi
            }
            compdef _offcuts offcuts

            """,
        ["fish"] = """
            function __offcuts_complete
                set -l line (commandline -cp)
                offcuts complete (string length -- "$line") "$line" 2>/dev/null
            end
            complete -c offcuts -a '(__offcuts_complete)'

            """,
        ["pwsh"] = """
            Register-ArgumentCompleter -Native -CommandName offcuts -ScriptBlock {
                param($word, $line, $position)
                offcuts complete $position "$line".PadRight($position) 2>$null | ForEach-Object {
                    [System.Management.Automation.CompletionResult]::new($_, $_, 'ParameterValue', $_)
                }
            }

            """,
    };
}
