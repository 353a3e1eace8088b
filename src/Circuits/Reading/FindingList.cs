using System.Collections.Immutable;
using Circuits.Findings;

namespace Circuits.Reading;

/// <summary>Collects the findings of one reading.</summary>
internal sealed class FindingList
{
    private readonly List<Finding> findings = [];

    /// <summary>Whether any finding so far is an error.</summary>
    public bool HasErrors { get; private set; }

    /// <summary>Adds a finding.</summary>
    public void Add(Finding finding)
    {
        findings.Add(finding);
        HasErrors |= finding.Severity == Severity.Error;
    }

    /// <summary>
    /// The findings by place. A fault in an inherited element is found once for every revision that inherits it;
    /// such doubles are dropped.
    /// </summary>
    public ImmutableArray<Finding> InOrder() =>
    [
        .. findings
            .DistinctBy(finding => (finding.Place, finding.Rule, finding.Message))
            .OrderBy(finding => finding.Place)
            .ThenBy(finding => finding.Rule, StringComparer.Ordinal)
            .ThenBy(finding => finding.Message, StringComparer.Ordinal),
    ];
}
