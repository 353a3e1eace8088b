using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Judging;
using Circuits.Model;
using Circuits.Studies;

namespace Circuits.Rendering;

/// <summary>What a check of one file came to.</summary>
/// <param name="File">The file, as it was named.</param>
/// <param name="Unit">The unit, or null when the file could not be read.</param>
/// <param name="Matched">A report of every matched set; empty when the file could not be read.</param>
/// <param name="ExpectationsHeld">How many of the file's own expectations hold.</param>
/// <param name="ExpectationsTotal">How many it has.</param>
/// <param name="Findings">What was found in the file and in its matched sets.</param>
public sealed record CheckedFile(
    string File, Unit? Unit, ImmutableArray<AssemblyReport> Matched, int ExpectationsHeld, int ExpectationsTotal,
    ImmutableArray<Finding> Findings)
{
    /// <summary>Every expectation of the file, and what it came to.</summary>
    public ImmutableArray<CheckedExpectation> Expectations { get; init; } = [];

    /// <summary>What an edit of the file did to its verdicts; null where nobody asked.</summary>
    public EditReport? Edit { get; init; }

    /// <summary>What verdicts rest on.</summary>
    public JudgeMode Mode { get; init; }

    /// <summary>Whether no finding is of error level.</summary>
    public bool Ok => Count(Severity.Error) == 0;

    /// <summary>How many findings have that severity.</summary>
    /// <param name="severity">The severity.</param>
    public int Count(Severity severity) => Findings.Count(finding => finding.Severity == severity);
}
