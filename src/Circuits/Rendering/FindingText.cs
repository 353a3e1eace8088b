using System.Text;
using Circuits.Findings;

namespace Circuits.Rendering;

/// <summary>A finding as a diagnostic: one line that editors and scripts can read, and indented lines that help.</summary>
public static class FindingText
{
    /// <summary>
    /// <c>file:line:column: error rule: message</c>, then help and related places on indented lines; each line ends with a newline.
    /// Lines are not wrapped.
    /// </summary>
    /// <param name="finding">The finding.</param>
    /// <param name="context">What it was found in, <c>late, gear R</c>, or empty.</param>
    /// <param name="units">The units that its sentences use; what a file says is told as it stands there.</param>
    public static string Of(Finding finding, string context = "", UnitSystem units = UnitSystem.Si)
    {
        var text = new StringBuilder();
        var place = finding.Place.ToString();
        if (place.Length > 0) text.Append(Printable.Of(place)).Append(": ");
        text.Append(Words.Of(finding.Severity)).Append(' ').Append(finding.Rule).Append(": ").Append(Sentence(finding.Message));
        if (context.Length > 0) text.Append(" [").Append(Printable.Of(context)).Append(']');
        text.Append('\n');
        if (finding.Help is { } help) text.Append("  help: ").Append(Printable.Of(help)).Append('\n');
        foreach (var related in finding.Related)
            text.Append("  ").Append(Printable.Of(related.Place.ToString())).Append(": ").Append(Sentence(related.Message)).Append('\n');
        return text.ToString();

        string Sentence(Phrase phrase) => Printable.Of(PhraseWords.Of(phrase, units));
    }
}
