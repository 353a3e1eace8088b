using System.Globalization;
using System.Text;
using Circuits.Findings;

namespace Circuits.Rendering;

/// <summary>Checks of files, for people and for editors: a line for each file, then its findings, each on a line of its own.</summary>
public static class CheckText
{
    /// <summary>The text; every line ends with a newline. Lines are not wrapped.</summary>
    /// <param name="files">The files, in the order to show them.</param>
    /// <param name="units">The units that sentences use.</param>
    public static string Of(IReadOnlyCollection<CheckedFile> files, UnitSystem units)
    {
        var text = new StringBuilder();
        foreach (var file in files)
        {
            text.Append(Summary(file)).Append('\n');
            foreach (var finding in file.Findings) text.Append(FindingText.Of(finding, FindingContext.Of(file.Unit, finding), units));
        }

        if (files.Count > 1)
        {
            var good = files.Count(file => file.Ok);
            text.Append(CultureInfo.InvariantCulture, $"{Words.Count(files.Count, "file")}: {good} ok, {files.Count - good} not ok\n");
        }

        return text.ToString();
    }

    private static string Summary(CheckedFile file)
    {
        var text = new StringBuilder(Printable.Of(file.File)).Append(file.Ok ? ": ok" : ": NOT OK");
        if (file.Unit is { } unit)
        {
            text.Append(": ").Append(file.Matched.IsEmpty ? "no matched set to check" : Words.Count(file.Matched.Length, "matched set"))
                .Append(" in ").Append(Words.Count(unit.Gears.Length, "gear"));
            if (file.ExpectationsTotal > 0)
                text.Append(CultureInfo.InvariantCulture, $", {file.ExpectationsHeld} of {Words.Count(file.ExpectationsTotal, "expectation")} held");
        }

        if (file.Edit is { VerdictsChanged: { } changed, Since: var since })
            text.Append(", ").Append(changed == 0 ? "no verdict" : Words.Count(changed, "verdict")).Append(" changed since ").Append(Printable.Of(since));
        text.Append(file.Unit is null ? ": not read" : file.Mode == Judging.JudgeMode.Quick ? ", judged by the static answer alone" : "");
        foreach (var severity in (Severity[])[Severity.Error, Severity.Warning, Severity.Note])
        {
            var count = file.Count(severity);
            if (count > 0) text.Append(", ").Append(Words.Count(count, Words.Of(severity)));
        }

        return text.ToString();
    }
}
