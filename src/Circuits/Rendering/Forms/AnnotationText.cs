using System.Globalization;
using System.Text;
using Circuits.Findings;

namespace Circuits.Rendering;

/// <summary>
/// Findings as workflow annotation lines, <c>::error file=..,line=..,col=..,title=..::message</c>: a forge that runs the
/// command shows each beside the line that it speaks of.
/// </summary>
public static class AnnotationText
{
    /// <summary>A line for each finding; nothing when there is none.</summary>
    /// <param name="reports">What was found, file by file.</param>
    /// <param name="context">What to say of the run.</param>
    public static string Of(IReadOnlyList<FindingReport> reports, FormContext context)
    {
        var text = new StringBuilder();
        foreach (var report in reports)
        {
            foreach (var finding in report.Findings) Line(text, report, finding, context);
        }

        return text.ToString();
    }

    private static void Line(StringBuilder text, FindingReport report, Finding finding, FormContext context)
    {
        text.Append("::").Append(finding.Severity == Severity.Note ? "notice" : Words.Of(finding.Severity)).Append(' ');
        var place = finding.Place.File.Length > 0 ? finding.Place : new Place(report.File, 0, 0);
        text.Append("file=").Append(Property(ArtifactPath.Of(place.File, context.Root)));
        if (place.Line > 0) text.Append(CultureInfo.InvariantCulture, $",line={place.Line}");
        if (place.Column > 0) text.Append(CultureInfo.InvariantCulture, $",col={place.Column}");
        text.Append(",title=").Append(Property(finding.Rule)).Append("::");
        text.Append(Data(Printable.Of(PhraseWords.Of(finding.Message, context.Units))));
        if (FindingContext.Of(report, finding) is { Length: > 0 } where) text.Append(Data($" [{Printable.Of(where)}]"));
        if (finding.Help is { } help) text.Append(Data("\n" + Printable.Of(help)));
        foreach (var related in finding.Related)
            text.Append(Data($"\n{Printable.Of(related.Place.ToString())}: {Printable.Of(PhraseWords.Of(related.Message, context.Units))}"));
        text.Append('\n');
    }

    // A line ends the command, a percent sign begins an escape; in a property a colon and a comma end it as well.
    private static string Data(string text) =>
        text.Replace("%", "%25", StringComparison.Ordinal).Replace("\r", "%0D", StringComparison.Ordinal).Replace("\n", "%0A", StringComparison.Ordinal);

    private static string Property(string text) =>
        Data(text).Replace(":", "%3A", StringComparison.Ordinal).Replace(",", "%2C", StringComparison.Ordinal);
}
