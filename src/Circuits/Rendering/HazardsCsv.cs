using System.Globalization;
using System.Text;
using Circuits.Rendering.Matrix;
using Circuits.Studies.Hazards;

namespace Circuits.Rendering;

/// <summary>
/// A failure mode and effects table as comma-separated values (RFC 4180), with the columns that IEC 60812 asks for. A cell that a spreadsheet would run as
/// a formula begins with an apostrophe.
/// </summary>
public static class HazardsCsv
{
    private static readonly string[] Headings =
    [
        "number", "item", "function", "failure mode", "code", "local effect", "end effect", "worst gear", "detected by", "severity", "severity word",
        "must not be driven", "weight", "file", "line",
    ];

    /// <summary>The table; every line ends with a carriage return and a newline.</summary>
    /// <param name="report">The table.</param>
    public static string Of(HazardReport report)
    {
        var text = new StringBuilder();
        Line(text, Headings);
        var number = 0;
        foreach (var row in report.Rows)
        {
            Line(text, [
                (++number).ToString(CultureInfo.InvariantCulture), row.Item, row.Function, PhraseWords.Of(row.Mode), row.Code, HazardsText.Local(row.Effects, report.Gears),
                HazardsText.End(row.Effects, report.Gears), row.Effects.IsEmpty ? "" : row.Effects[0].Gear, HazardsText.Detected(row, UnitSystem.Si),
                ((int)row.Severity).ToString(CultureInfo.InvariantCulture), SeverityScale.Of(row.Severity).Word, row.MustNotBeDriven ? "yes" : "no",
                row.Weight?.ToString("0.###", CultureInfo.InvariantCulture) ?? "", row.Place.File, row.Place.Line > 0 ? row.Place.Line.ToString(CultureInfo.InvariantCulture) : "",
            ]);
        }

        return text.ToString();
    }

    private static void Line(StringBuilder text, string[] cells) => text.AppendJoin(',', cells.Select(CsvForm.Cell)).Append("\r\n");
}
