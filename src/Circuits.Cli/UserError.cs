using Circuits.Findings;
using Circuits.Rendering;

namespace Circuits.Cli;

/// <summary>The command cannot run as it was given, and the user can mend that.</summary>
/// <param name="rule">What kind of error, in kebab case.</param>
/// <param name="message">One sentence.</param>
/// <param name="help">What to do, or null.</param>
internal sealed class UserError(string rule, string message, string? help = null) : Exception(message)
{
    public const string Usage = "usage";
    public const string Output = "output";

    /// <summary>The error as diagnostics are written: one line, and a line of help.</summary>
    public string Text { get; private init; } =
        $"circuits: error {rule}: {Printable.Of(message)}\n" + (help is null ? "" : $"  help: {Printable.Of(help)}\n");

    /// <summary>Several things that are wrong with what was asked for, each a diagnostic of its own.</summary>
    /// <param name="faults">What is wrong.</param>
    public static UserError Of(IEnumerable<Finding> faults) => new(Usage, "the command cannot be carried out")
    {
        Text = string.Concat(faults.Select(fault => FindingText.Of(fault))),
    };

    /// <summary>Several things that are wrong with the command line, each a diagnostic of its own.</summary>
    /// <param name="faults">What is wrong, and what to do about it.</param>
    public static UserError Of(IEnumerable<(string Message, string? Help)> faults) => new(Usage, "the command cannot be carried out")
    {
        Text = string.Concat(faults.Select(fault => new UserError(Usage, fault.Message, fault.Help).Text)),
    };

    /// <summary>An unknown word where one of a few is expected, with the one that was probably meant.</summary>
    /// <param name="what">What the word stands for, <c>gear</c>.</param>
    /// <param name="word">The word.</param>
    /// <param name="known">The words there are.</param>
    /// <param name="where">Where they are known, <c> in unit.yaml</c>, or empty.</param>
    public static UserError Unknown(string what, string word, IReadOnlyCollection<string> known, string where = "")
    {
        var close = DidYouMean.Find(word, known);
        var help = close is not null ? $"Did you mean {close}?"
            : known.Count == 0 ? $"There is no {what}{where}."
            : $"Known: {string.Join(", ", known)}.";
        return new UserError(Usage, $"unknown {what} '{word}'{where}", help);
    }
}
