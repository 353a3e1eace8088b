using System.Collections.Immutable;
using Circuits.Model;

namespace Circuits.Judging.Conditions;

/// <summary>Holds what flows against what a unit needs.</summary>
internal static class NeedJudge
{
    /// <summary>A recognized need with less than this share of the matched set's flow or pressure is starved. Judgement, no source.</summary>
    public const double Least = 0.5;

    /// <summary>A recognized need with more than this many times the matched set's pressure has too much. Judgement, no source.</summary>
    public const double Most = 1.5;

    /// <summary>A pressure, kPa, too small to be compared.</summary>
    private const double Nothing = 1;

    private const double LitresPerMinute = 6e4;

    /// <summary>What each need comes to in a gear at a condition; those that do not count there are left out.</summary>
    /// <param name="needs">The unit's needs.</param>
    /// <param name="gear">The gear's name.</param>
    /// <param name="here">The assembly there; converged.</param>
    /// <param name="matched">The nearest matched set there, or null.</param>
    public static ImmutableArray<NeedReport> Judge(ImmutableArray<UnitNeed> needs, string gear, GearAtCondition here, GearAtCondition? matched)
    {
        var reports = ImmutableArray.CreateBuilder<NeedReport>();
        foreach (var need in needs)
        {
            if (!need.CountsIn(gear)) continue;
            var node = here.Find(need);
            var there = matched?.Find(need) ?? -1;
            if (need.Given is null && there < 0) continue;
            var (pressure, flow) = (here.Kilopascals(node), here.Through(node) * LitresPerMinute);
            double? matchedPressure = there < 0 ? null : matched!.Kilopascals(there);
            double? matchedFlow = there < 0 ? null : matched!.Through(there) * LitresPerMinute;
            var verdict = need.Given is { } given ? Given(given, pressure, flow) : Recognized(pressure, flow, matchedPressure ?? 0, matchedFlow ?? 0);
            reports.Add(new NeedReport(need, verdict, pressure, flow, matchedPressure, matchedFlow));
        }

        return reports.DrainToImmutable();
    }

    private static Verdict Given(Need need, double pressure, double flow) =>
        pressure < need.Least?.Kilopascals || flow < need.Flow?.LitresPerMinute ? Verdict.Starved
        : pressure > need.Most?.Kilopascals ? Verdict.OverPressure
        : Verdict.AsCharted;

    private static Verdict Recognized(double pressure, double flow, double matchedPressure, double matchedFlow) =>
        flow < Least * matchedFlow || (matchedPressure > Nothing && pressure < Least * matchedPressure) ? Verdict.Starved
        : matchedPressure > Nothing && pressure > Most * matchedPressure ? Verdict.OverPressure
        : Verdict.AsCharted;
}
