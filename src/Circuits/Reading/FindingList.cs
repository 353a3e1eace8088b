using System.Collections.Immutable;
using Circuits.Findings;

namespace Circuits.Reading;

/// <summary>Ends the reading of a file; the finding that says why has been added.</summary>
internal sealed class ReadingStopped : Exception;

/// <summary>Collects the findings of one reading.</summary>
internal sealed class FindingList
{
    /// <summary>How many findings are worth having. A file with more is broken as a whole, and each costs a search for words that were meant.</summary>
    public const int Most = 1000;

    private readonly List<Finding> findings = [];
    private readonly HashSet<(Place Place, string Rule, Phrase Message)> seen = [];

    /// <summary>Whether any finding so far is an error.</summary>
    public bool HasErrors { get; private set; }

    /// <summary>
    /// Adds a finding, unless it is there: a fault in an inherited element may be met again in every revision that
    /// inherits it.
    /// </summary>
    /// <exception cref="ReadingStopped">There are too many findings.</exception>
    public void Add(Finding finding)
    {
        if (findings.Count > Most) throw new ReadingStopped();
        finding = finding with { Message = finding.Message.WithNames(Quote.OnOneLine), Help = finding.Help is null ? null : Quote.OnOneLine(finding.Help) };
        if (!seen.Add((finding.Place, finding.Rule, finding.Message))) return;
        if (findings.Count == Most)
        {
            findings.Add(FileRules.TooManyFaults.At(
                finding.Place with { Line = 0, Column = 0 }, $"More than {Most} faults; reading stopped", "Mend the first ones and read again."));
            throw new ReadingStopped();
        }

        findings.Add(finding);
        HasErrors |= finding.Severity == Severity.Error;
    }

    /// <summary>The findings by place.</summary>
    public ImmutableArray<Finding> InOrder() => findings.Count == 0 ? [] :
    [
        .. findings
            .OrderBy(finding => finding.Place)
            .ThenBy(finding => finding.Rule, StringComparer.Ordinal)
            .ThenBy(finding => finding.Message, Phrase.InOrder),
    ];
}
