//! The completions of each shell. What may be typed is asked of `fits
//! candidates`, so that every shell knows what the prompt knows.

/// The script for a shell.
pub fn script(shell: &str) -> Option<&'static str> {
    Some(match shell {
        "bash" => BASH,
        "zsh" => ZSH,
        "fish" => FISH,
        "powershell" | "pwsh" => POWERSHELL,
        _ => return None,
    })
}

/// Where nothing is offered, bash offers files.
const BASH: &str = r#"# Completions of fits for bash.
_fits() {
    local typed=${COMP_WORDS[COMP_CWORD]} quote= word says
    case $typed in [\'\"]*) quote=${typed:0:1} ;; esac
    local words=("${COMP_WORDS[@]:1:COMP_CWORD}")
    words=("${words[@]//[\'\"\\]/}")
    COMPREPLY=()
    while IFS=$'\t' read -r word says; do
        if [ -z "$quote" ]; then printf -v word %q "$word"; fi
        COMPREPLY+=("$word")
    done < <("$1" candidates -- "${words[@]}" 2>/dev/null)
}
complete -o default -F _fits fits
"#;

const ZSH: &str = r#"#compdef fits
# Completions of fits for zsh.
_fits() {
    local word says
    local -a found shown
    while IFS=$'\t' read -r word says; do
        found+=("$word")
        shown+=("$word${says:+  -- $says}")
    done < <("${words[1]}" candidates -- "${(@)words[2,CURRENT]//[\'\"\\]/}" 2>/dev/null)
    if (( $#found )); then
        compadd -l -d shown -a found
    else
        _files
    fi
}
if [ "$funcstack[1]" = "_fits" ]; then
    _fits "$@"
else
    compdef _fits fits
fi
"#;

const FISH: &str = r#"# Completions of fits for fish.
function __fits_candidates
    set -l words (commandline -opc) (commandline -ct)
    set -l words (string replace -ra "['\"\\\\]" '' -- $words)
    $words[1] candidates -- $words[2..-1] 2>/dev/null
end
complete -c fits -f -a '(__fits_candidates)'
complete -c fits -l crib -r -F
complete -c fits -l log -r -F
complete -c fits -n '__fish_seen_subcommand_from batch job sheet' -F
"#;

const POWERSHELL: &str = r#"# Completions of fits for PowerShell 7.3 and later.
Register-ArgumentCompleter -Native -CommandName fits -ScriptBlock {
    param($typed, $line, $at)
    $before = @($line.CommandElements | Where-Object { $_.Extent.EndOffset -lt $at } |
        Select-Object -Skip 1 | ForEach-Object { "$_".Trim("'", '"') })
    $now = "$typed".Trim("'", '"')
    & "$($line.CommandElements[0])" candidates -- @before $now 2>$null | ForEach-Object {
        $word, $says = $_ -split "`t", 2
        if (-not $says) { $says = $word }
        $text = if ($word -match "[\s,;()#']") { "'" + $word.Replace("'", "''") + "'" } else { $word }
        [System.Management.Automation.CompletionResult]::new($text, $word, 'ParameterValue', $says)
    }
}
"#;
