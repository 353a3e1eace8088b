using System.CommandLine;

namespace Circuits.Cli;

/// <summary><c>completion</c>: what a shell needs to complete this program's words.</summary>
internal static class CompletionVerb
{
    private static readonly string[] Shells = ["bash", "zsh"];

    public static Verb Create(CommonOptions options)
    {
        var shell = new Argument<string>("SHELL") { Description = $"One of {string.Join(", ", Shells)}." };
        Completes.With(shell, () => Shells);
        return new Verb(
            "completion", "Prints a script that lets a shell complete verbs, options, and names out of circuit files.",
            [shell, options.Output],
            ["source <(circuits completion bash)", "circuits completion zsh > ~/.zsh/completions/_circuits"],
            session => Run(session, session.Parsed.GetValue(shell)!));
    }

    private static int Run(Session session, string shell)
    {
        if (!Shells.Contains(shell)) throw UserError.Unknown("shell", shell, Shells);
        using var stream = typeof(CompletionVerb).Assembly.GetManifestResourceStream($"completion.{shell}")
            ?? throw new InvalidOperationException("The script is not embedded.");
        using var reader = new StreamReader(stream);
        session.Finish(reader.ReadToEnd());
        return ExitCode.Fine;
    }
}
