using System.Globalization;
using System.Text;
using System.Xml;
using Circuits.Findings;

namespace Circuits.Rendering;

/// <summary>
/// What was looked at as JUnit XML: a suite for each file, a case for each gear of an assembly and for each expectation. A
/// case fails where a finding is of error level; what is less grave stands in its output. A file that could not be read
/// is an error. Times are left out: the same input gives the same bytes.
/// </summary>
public static class JUnitText
{
    private static readonly XmlWriterSettings Settings = new()
    {
        Encoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false),
        Indent = true,
        NewLineChars = "\n",
        NewLineHandling = NewLineHandling.Replace,
    };

    /// <summary>The document.</summary>
    /// <param name="reports">What was found, file by file.</param>
    /// <param name="context">What to say of the run.</param>
    public static string Of(IReadOnlyList<FindingReport> reports, FormContext context)
    {
        var suites = reports.Select(Suite).ToList();
        using var bytes = new MemoryStream();
        using (var xml = XmlWriter.Create(bytes, Settings))
        {
            xml.WriteStartElement("testsuites");
            xml.WriteAttributeString("name", $"circuits {context.Verb}");
            Counts(xml, [.. suites.SelectMany(suite => suite)]);
            foreach (var (report, cases) in reports.Zip(suites)) Suite(xml, report, cases, context.Units);
            xml.WriteEndElement();
        }

        return Encoding.UTF8.GetString(bytes.ToArray()) + "\n";
    }

    /// <summary>A case with the name that it has in its suite, and whether it could not be run at all.</summary>
    private sealed record Row(string Class, string Name, TestedCase Case, bool CouldNotRun)
    {
        public Finding[] Errors { get; } = [.. Case.Findings.Where(finding => finding.Severity == Severity.Error)];
    }

    private static List<Row> Suite(FindingReport report)
    {
        var file = Path.GetFileNameWithoutExtension(report.File);
        var cases = report.Cases.IsEmpty && report.Unit is { } unit ? TestedCases.Of(unit, report.Findings) : report.Cases;
        var inCases = new HashSet<Finding>(cases.SelectMany(one => one.Findings), ReferenceEqualityComparer.Instance);
        var own = new TestedCase("", "file", [.. report.Findings.Where(finding => !inCases.Contains(finding))])
        {
            Outcome = report.Unit is null ? "not read" : "read",
        };
        var rows = new List<Row> { new(file, own.Name, own, report.Unit is null) };
        var taken = new Dictionary<(string, string), int>();
        foreach (var one in cases)
        {
            // Readers of the form tell cases apart by their names.
            var count = taken[(one.Group, one.Name)] = taken.GetValueOrDefault((one.Group, one.Name)) + 1;
            var name = count == 1 ? one.Name : string.Create(CultureInfo.InvariantCulture, $"{one.Name} ({count})");
            rows.Add(new Row($"{file}.{one.Group}", name, one, CouldNotRun: false));
        }

        return rows;
    }

    private static void Suite(XmlWriter xml, FindingReport report, List<Row> rows, UnitSystem units)
    {
        xml.WriteStartElement("testsuite");
        xml.WriteAttributeString("name", Safe(report.File));
        Counts(xml, rows);
        xml.WriteAttributeString("skipped", "0");
        if (report.Unit is { } unit)
        {
            xml.WriteStartElement("properties");
            Property(xml, "unit", unit.Name);
            Property(xml, "data", Words.Of(unit.Data));
            xml.WriteEndElement();
        }

        foreach (var row in rows) Case(xml, report, row, units);
        xml.WriteEndElement();
    }

    private static void Case(XmlWriter xml, FindingReport report, Row row, UnitSystem units)
    {
        xml.WriteStartElement("testcase");
        xml.WriteAttributeString("name", Safe(row.Name));
        xml.WriteAttributeString("classname", Safe(row.Class));
        if (row.Case.Outcome is { } outcome) xml.WriteAttributeString("status", outcome);
        if (row.Errors is [var first, ..])
        {
            xml.WriteStartElement(row.CouldNotRun ? "error" : "failure");
            xml.WriteAttributeString("message", Safe(PhraseWords.Of(first.Message, units)));
            xml.WriteAttributeString("type", first.Rule);
            xml.WriteString(Lines(report, row.Errors, units));
            xml.WriteEndElement();
        }

        var rest = row.Case.Findings.Where(finding => finding.Severity != Severity.Error).ToList();
        if (rest.Count > 0) xml.WriteElementString("system-out", Lines(report, rest, units));
        xml.WriteEndElement();
    }

    private static string Lines(FindingReport report, IEnumerable<Finding> findings, UnitSystem units) =>
        "\n" + string.Concat(findings.Select(finding => Valid(FindingText.Of(finding, FindingContext.Of(report, finding), units))));

    private static void Counts(XmlWriter xml, List<Row> rows)
    {
        Count("tests", rows.Count);
        Count("failures", rows.Count(row => row.Errors.Length > 0 && !row.CouldNotRun));
        Count("errors", rows.Count(row => row.Errors.Length > 0 && row.CouldNotRun));

        void Count(string name, int count) => xml.WriteAttributeString(name, count.ToString(CultureInfo.InvariantCulture));
    }

    private static void Property(XmlWriter xml, string name, string value)
    {
        xml.WriteStartElement("property");
        xml.WriteAttributeString("name", name);
        xml.WriteAttributeString("value", Safe(value));
        xml.WriteEndElement();
    }

    private static string Safe(string text) => Valid(Printable.Of(text));

    // XML 1.0 has no way to write some characters, not even as references (https://www.w3.org/TR/xml/#charsets).
    private static string Valid(string text)
    {
        if (text.All(letter => XmlConvert.IsXmlChar(letter) || char.IsSurrogate(letter))) return text;
        var safe = new StringBuilder(text.Length + 8);
        foreach (var letter in text)
        {
            if (XmlConvert.IsXmlChar(letter) || char.IsSurrogate(letter)) safe.Append(letter);
            else safe.Append(CultureInfo.InvariantCulture, $"\\u{(int)letter:X4}");
        }

        return safe.ToString();
    }
}
