using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Model;

namespace Circuits.Rendering;

/// <summary>What a verb found in one file, for the forms that carry findings and nothing else.</summary>
/// <param name="File">The file, as it was named.</param>
/// <param name="Unit">The unit, or null when the file could not be read.</param>
/// <param name="Findings">What was found, each once.</param>
public sealed record FindingReport(string File, Unit? Unit, ImmutableArray<Finding> Findings)
{
    /// <summary>
    /// What was looked at, for forms that also tell what is right. A finding may belong to several; one that belongs to none
    /// belongs to the file. When there are none, each assembly and gear with a finding makes one.
    /// </summary>
    public ImmutableArray<TestedCase> Cases { get; init; } = [];
}

/// <summary>One thing that was looked at: a gear of an assembly, an expectation.</summary>
/// <param name="Group">What it belongs to, <c>late</c>.</param>
/// <param name="Name">What it is, <c>gear R</c>; the same from run to run.</param>
/// <param name="Findings">What was found there; it fails when any is of error level.</param>
public sealed record TestedCase(string Group, string Name, ImmutableArray<Finding> Findings)
{
    /// <summary>What it came to, <c>as-charted</c>, or null.</summary>
    public string? Outcome { get; init; }
}

/// <summary>What a form says of the run itself.</summary>
/// <param name="Verb">The verb, <c>check</c>.</param>
/// <param name="Version">The program's version, <c>1.2.3</c> or <c>1.2.3+build</c>.</param>
/// <param name="Root">The absolute path of the folder that relative paths count from.</param>
public sealed record FormContext(string Verb, string Version, string Root)
{
    /// <summary>The units of messages; the default is SI.</summary>
    public UnitSystem Units { get; init; }
}

/// <summary>Findings in every form that carries nothing else.</summary>
public static class FindingForms
{
    /// <summary>Whether a format carries findings and nothing else.</summary>
    /// <param name="format">The format.</param>
    public static bool Has(OutputFormat format) => format is OutputFormat.Sarif or OutputFormat.JUnit or OutputFormat.Annotations;

    /// <summary>The findings in that format; every line ends with a newline.</summary>
    /// <param name="format">One that <see cref="Has"/> knows.</param>
    /// <param name="reports">What was found, file by file.</param>
    /// <param name="context">What to say of the run.</param>
    /// <exception cref="ArgumentOutOfRangeException">The format carries more than findings.</exception>
    public static string Of(OutputFormat format, IReadOnlyList<FindingReport> reports, FormContext context) => format switch
    {
        OutputFormat.Sarif => SarifText.Of(reports, context),
        OutputFormat.JUnit => JUnitText.Of(reports, context),
        OutputFormat.Annotations => AnnotationText.Of(reports, context),
        _ => throw new ArgumentOutOfRangeException(nameof(format), format, "The format carries more than findings."),
    };
}
