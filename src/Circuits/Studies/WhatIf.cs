using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Judging;
using Circuits.Model;
using Circuits.Studies.Changes;

namespace Circuits.Studies;

/// <summary>One assembly before and after changes.</summary>
/// <param name="Before">The report before.</param>
/// <param name="After">The report after.</param>
/// <param name="Changes">The changes.</param>
/// <param name="Gears">The gears in which anything differs, in the order of the file.</param>
/// <param name="NewFindings">Findings that come with the changes.</param>
/// <param name="VanishedFindings">Findings that go with them.</param>
public sealed record WhatIfReport(
    AssemblyReport Before, AssemblyReport After, ImmutableArray<Change> Changes, ImmutableArray<GearDifference> Gears,
    ImmutableArray<Finding> NewFindings, ImmutableArray<Finding> VanishedFindings)
{
    /// <summary>Whether anything differs.</summary>
    public bool Differs => !Gears.IsEmpty || Before.Changes.Zip(After.Changes).Any(pair => pair.First.Verdict != pair.Second.Verdict) || !NewFindings.IsEmpty || !VanishedFindings.IsEmpty;
}

/// <summary>Answers "what if": holds an assembly against itself with changes.</summary>
public static class WhatIf
{
    /// <summary>Judges both and keeps what differs.</summary>
    /// <param name="judge">The unit's judge.</param>
    /// <param name="before">The assembly before.</param>
    /// <param name="after">The assembly after.</param>
    /// <param name="changes">What was changed.</param>
    public static WhatIfReport Of(UnitJudge judge, Assembly before, Assembly after, ImmutableArray<Change> changes)
    {
        var (was, now) = (judge.Report(before), judge.Report(after));
        ImmutableArray<GearDifference> gears =
            [.. was.Gears.Zip(now.Gears, (one, other) => new GearDifference(one, other)).Where(gear => gear.Differs)];
        return new WhatIfReport(was, now, changes, gears, New(was.Findings, now.Findings), New(now.Findings, was.Findings));
    }

    private static ImmutableArray<Finding> New(ImmutableArray<Finding> before, ImmutableArray<Finding> after)
    {
        var known = before.Select(FindingKey.Of).ToHashSet();
        return [.. after.Where(finding => !known.Contains(FindingKey.Of(finding)))];
    }
}
