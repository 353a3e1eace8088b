using System.Diagnostics;
using Circuits.Cli;
using Xunit;

namespace Circuits.Tests.Cli;

public class CompletionTests
{
    private static readonly string Rill = Path.Combine(Repository.Root, "circuits", "rill", "rill.yaml");

    [Theory]
    [InlineData("circuits ch", "check")]
    [InlineData("  circuits ch", "check")]
    [InlineData("circuits check --ch", "--changed-only")]
    [InlineData("circuits check --format s", "sarif")]
    [InlineData("circuits check --format=s", "--format=sarif")]
    [InlineData("circuits trace --format ", "json text")]
    [InlineData("circuits gears RILL --fit ", "body=1 body=2 early late plate=1 plate=2")]
    [InlineData("circuits gears RILL --fit early,pl", "early,plate=1 early,plate=2")]
    [InlineData("circuits gears RILL --fit=plate=", "--fit=plate=1 --fit=plate=2")]
    [InlineData("circuits gears RILL --gear ", "1 2 N R")]
    [InlineData("circuits trace RILL --gear R --of hi", "high")]
    [InlineData("circuits gears RILL --gear R --form", "--format")]
    [InlineData("circuits what-if RILL --hole plate@1", "plate@11= plate@12= plate@13=")]
    [InlineData("circuits what-if RILL --plug plate@6", "plate@6-7")]
    [InlineData("circuits what-if RILL --drop ", "body.two-way")]
    [InlineData("circuits what-if RILL --stick body.", "body.main=open body.main=shut")]
    [InlineData("circuits what-if RILL --leak housing.h", "housing.high~")]
    [InlineData("circuits what-if RILL --from la", "late")]
    [InlineData("circuits matrix RILL --fit plate=", "plate=1 plate=2")]
    [InlineData("circuits remedy RILL --fit late --have body=", "body=1 body=2")]
    [InlineData("circuits identify RILL --part ", "body plate")]
    [InlineData("circuits shifts RILL --shift ", "1-2 2-1 N-1 N-R")]
    [InlineData("circuits size RILL --shift 1-2 --clutch ", "forward high reverse-brake")]
    [InlineData("circuits size RILL --want h", "hold=")]
    [InlineData("circuits explain lost", "lost-supply")]
    [InlineData("circuits completion ", "bash zsh")]
    [InlineData("circuits --v", "--version")]
    public void What_may_stand_at_the_cursor_is_offered(string line, string offered) =>
        Assert.Equal(offered, string.Join(' ', Suggestions.For(line.Replace("RILL", Rill, StringComparison.Ordinal))));

    // Then the shell offers names of files, or nothing.
    [Theory]
    [InlineData("")]
    [InlineData("circuits")]
    [InlineData("circuits check ")]
    [InlineData("circuits check circ")]
    [InlineData("circuits check -o ")]
    [InlineData("circuits chekc ")]
    [InlineData("circuits gears no-such-file.yaml --fit ")]
    [InlineData("circuits gears \"unclosed --fit ")]
    public void What_only_the_shell_knows_is_left_to_it(string line) => Assert.Empty(Suggestions.For(line));

    [Fact]
    public void Every_verb_is_offered() => Assert.Equal(Verbs.Names, Suggestions.For("circuits "));

    [Theory]
    [InlineData("circuits explain lost-su", "lost-supply")]
    [InlineData("circuits gears RILL --fit plate=", "1 2")]
    [InlineData("circuits gears RILL --fit early,plate=2 --gear ", "1 2 N R")]
    [InlineData("circuits check circ", "")]
    public void In_bash_it_completes(string line, string offered) => Assert.Equal(offered, Run("bash", "--norc", "--noprofile", "-c", $$"""
        circuits() { "{{Program}}" "$@"; }
        source <(circuits completion bash)
        [[ $(complete -p circuits) == *_circuits* ]] || exit 9
        COMP_LINE=$1 COMP_POINT=${#1} COMP_WORDS=(circuits)
        _circuits
        echo "${COMPREPLY[*]}"
        """, "bash", line.Replace("RILL", Rill, StringComparison.Ordinal)));

    // A shell in a terminal of its own, keys and all.
    [Theory]
    [InlineData("circuits explain lost-su\t | head -n 1", "lost-supply   error")]
    [InlineData("circuits gears RILL --fit late --gear R --form\tan\t | tail -n 1 | cut -c 1-8", "::notice")]
    public void In_zsh_it_completes(string keys, string printed)
    {
        Assert.SkipUnless(Exists("zsh"), "There is no zsh.");
        var output = Run("zsh", "-f", "-c", """
            zmodload zsh/zpty
            zpty shell "PS1='> ' zsh -f -i"
            zpty -w shell "circuits() { '$1' \"\$@\"; }; autoload -U compinit; compinit -u -D; source <(circuits completion zsh); echo RE''ADY"
            zpty -r shell out '*READY*'
            for key in "${(@s::)2}"; do
              zpty -w -n shell $key
              [[ $key == $'\t' ]] && sleep 1
            done
            zpty -w -n shell $'; echo DO\'\'NE\n'
            zpty -r shell out '*DONE*'
            print -r -- $out
            """, "zsh", Program, keys.Replace("RILL", Rill, StringComparison.Ordinal));
        Assert.Contains(printed, output);
    }

    private static string Program => Path.Combine(AppContext.BaseDirectory, "circuits");

    private static bool Exists(string program) =>
        (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator).Any(folder => File.Exists(Path.Combine(folder, program)));

    private static string Run(string program, params string[] args)
    {
        using var shell = Process.Start(new ProcessStartInfo(program, args) { RedirectStandardOutput = true, RedirectStandardInput = true })!;
        shell.StandardInput.Close();
        var output = shell.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
        Assert.True(shell.WaitForExit(TimeSpan.FromSeconds(60)));
        Assert.Equal(0, shell.ExitCode);
        return output.Result.TrimEnd('\n');
    }
}
