using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Judging;
using Circuits.Judging.Changes;
using Circuits.Judging.Rules;
using Circuits.Model;
using Circuits.Quantities;
using Circuits.Studies.Changes;
using Circuits.Studies.Shifts;

namespace Circuits.Studies.Sizing;

/// <summary>Finds the hole that gives a wanted time, and says what else it changes.</summary>
public static class HoleSizing
{
    /// <summary>The smallest hole that is tried unless another is asked for, mm: about the smallest number drill.</summary>
    public const double Least = 0.35;

    /// <summary>The largest, mm, where no ball limits it.</summary>
    public const double Most = 10;

    /// <summary>A hole may have this share of the diameter of a ball that has to close it.</summary>
    private const double BallShare = 0.9;

    /// <summary>A time differs where it is apart by more than this, ms, and by a hundredth.</summary>
    private const double Apart = 2;

    /// <summary>Sizes a hole.</summary>
    /// <param name="judge">The unit's judge.</param>
    /// <param name="assembly">The assembly.</param>
    /// <param name="request">What is wanted.</param>
    /// <param name="conditions">The conditions.</param>
    /// <param name="place">Where the location is named, for faults.</param>
    /// <returns>The report, or what is wrong with the request.</returns>
    public static (SizeReport? Report, ImmutableArray<Finding> Faults) Run(
        UnitJudge judge, Assembly assembly, SizeRequest request, ShiftConditions conditions, Place place)
    {
        var first = Drilled(assembly, request.Location, request.Least, place);
        if (first.Assembly is null) return (null, first.Faults);
        var hole = (SetHole)first.Changes[0];
        var before = ShiftStudy.Time(assembly, conditions, [request.Shift]);
        if (Clutch(before.Shifts[0], request, place, out var clutch) is { } fault) return (null, [fault]);
        var now = hole.Was?.Area?.EquivalentDiameter;
        var search = new HoleSearch(diameter =>
            TimeOf(ShiftStudy.Time(Drilled(assembly, request.Location, diameter, place).Assembly!, conditions, [request.Shift]).Shifts[0], request.Time, clutch));
        var most = request.Most ?? Limit(assembly, hole);
        var found = search.Find(request.Ms, request.Least, most, now);
        var report = new SizeReport(
            assembly, request with { Most = most }, clutch, found.Outcome,
            now is { } size ? new SizedHole(size, TimeOf(before.Shifts[0], request.Time, clutch)) : null,
            found.Millimetres is { } diameter ? new SizedHole(diameter, search.At(diameter)) : null)
        {
            Solutions = found.Solutions,
            Assumptions = before.Assumptions,
        };
        if (found is not { Outcome: SizeOutcome.Found, Millimetres: { } right }) return (Missed(report with { Tried = search.Tried }), []);
        var done = Drilled(assembly, request.Location, right, place);
        var whatIf = WhatIf.Of(judge, assembly, done.Assembly!, done.Changes);
        return (report with
        {
            Work = done.Changes[0],
            DrillBelow = Drill(NumberDrill.Below(new Length(right))),
            DrillAbove = Drill(NumberDrill.Above(new Length(right))),
            Tried = search.Tried,
            Gears = whatIf.Gears,
            Findings = whatIf.NewFindings,
            Shifts = Changed(assembly, done.Assembly!, conditions),
        }, []);

        SizedHole? Drill(int? number) => number is { } drill && NumberDrill.Diameter(drill) is { } length
            ? new SizedHole(length.Millimetres, search.At(length.Millimetres)) { Drill = drill }
            : null;
    }

    /// <summary>The holes of a report whose times may spread: the one found and the drills beside it; where none was found, the one that is there.</summary>
    /// <param name="report">The report.</param>
    public static ImmutableArray<SizedHole> HolesOf(SizeReport report) => report.Outcome == SizeOutcome.Found
        ? [.. new[] { report.DrillBelow, report.Hole, report.DrillAbove }.OfType<SizedHole>()]
        : [.. new[] { report.Now }.OfType<SizedHole>()];

    /// <summary>The time wanted that holes give in another assembly of the same file.</summary>
    /// <param name="assembly">The assembly, of a unit whose sizes were drawn.</param>
    /// <param name="report">What was asked for, and found.</param>
    /// <param name="holes">The holes.</param>
    /// <param name="conditions">The conditions.</param>
    /// <param name="place">Where the location is named.</param>
    public static SizeTimes Times(Assembly assembly, SizeReport report, ImmutableArray<SizedHole> holes, ShiftConditions conditions, Place place)
    {
        var (unit, asked) = (assembly.Unit, report.Request.Shift);
        var shift = ShiftPlans.Between(unit, unit.FindGear(asked.From.Name)!, unit.FindGear(asked.To.Name)!);
        return new SizeTimes([.. holes.Select(hole => TimeOf(
            ShiftStudy.Time(Drilled(assembly, report.Request.Location, hole.Millimetres, place).Assembly!, conditions, [shift]).Shifts[0], report.Request.Time, report.Clutch))]);
    }

    private static SizeReport Missed(SizeReport report)
    {
        var shift = report.Request.Shift;
        var missed = NoSuchHole.Rule.At(shift.Profile?.Place ?? shift.To.Place, $"{shift.Name}: {report.Reason}") with { Gear = shift.To.Name };
        return report with { Findings = [missed] };
    }

    private static ResolvedChanges Drilled(Assembly assembly, string location, double diameter, Place place) => ChangeResolver.Resolve(
        assembly, [new ChangeRequest.Hole(location, new Shape.Hole(new Length(diameter), FormattableString.Invariant($"{diameter:0.###} mm")), place)]);

    /// <summary>The largest hole that every ball which may have to close it still closes.</summary>
    private static double Limit(Assembly assembly, SetHole hole)
    {
        var joint = assembly.Unit.Joints.First(joint => joint.Sheets.Any(sheet => sheet.Name == hole.Part)).Name;
        var balls = assembly.Revisions.SelectMany(revision => revision.Balls)
            .Where(ball => ball.Seats.OfType<Seat.AtLocation>().Any(seat => seat.Location == hole.Location && (seat.Joint ?? joint) == joint));
        return balls.Select(ball => ball.Diameter?.Millimetres * BallShare ?? Most).Append(Most).Min();
    }

    /// <summary>The clutch that is meant; a fault where none or several come into question.</summary>
    private static Finding? Clutch(TimedShiftReport shift, SizeRequest request, Place place, out string? clutch)
    {
        clutch = null;
        var role = request.Time == WantedTime.Fill ? ClutchRole.OnComing : ClutchRole.OffGoing;
        if (request.Time is WantedTime.Hold or WantedTime.Gap)
        {
            return request.Clutch is null ? null : ChangeRules.UnknownTarget.At(place, $"that time is the gear's and belongs to no single clutch", "Leave the clutch out.");
        }

        var names = shift.Clutches.Where(each => each.Role == role).Select(each => each.Clutch).ToImmutableArray();
        if (request.Clutch is { } named)
        {
            clutch = named;
            return names.Contains(named) ? null : TargetNames.Unknown($"clutch that {(role == ClutchRole.OnComing ? "comes on" : "goes off")} in {request.Shift.Name}", named, place, names, []);
        }

        if (names is [var only])
        {
            clutch = only;
            return null;
        }

        return names.IsEmpty
            ? ChangeRules.UnknownTarget.At(place, $"no clutch {(role == ClutchRole.OnComing ? "comes on" : "goes off")} in {request.Shift.Name}")
            : ChangeRules.AmbiguousTarget.At(place, $"several clutches {(role == ClutchRole.OnComing ? "come on" : "go off")} in {request.Shift.Name}", $"Name one: {string.Join(", ", names)}.");
    }

    private static double? TimeOf(TimedShiftReport shift, WantedTime time, string? name)
    {
        if (time == WantedTime.Hold) return shift.HoldsMs;
        if (time == WantedTime.Gap) return shift.GapMs;
        var clutch = shift.Clutches.FirstOrDefault(each => each.Clutch == name);
        return time == WantedTime.Fill ? clutch?.FillMs : clutch is { NeedBefore: > 0 } ? clutch.LetsGoMs : clutch?.ReleasedMs;
    }

    private static ImmutableArray<ShiftChange> Changed(Assembly before, Assembly after, ShiftConditions conditions)
    {
        var plans = ShiftPlans.Of(before.Unit);
        return
        [
            .. ShiftStudy.Time(before, conditions, plans).Shifts.Zip(ShiftStudy.Time(after, conditions, plans).Shifts, (one, other) => new ShiftChange(one, other)).Where(Differs),
        ];
    }

    private static bool Differs(ShiftChange change)
    {
        var (before, after) = (change.Before, change.After);
        if (before.Verdict != after.Verdict || before.Clutches.Length != after.Clutches.Length) return true;
        return before.Clutches.Zip(after.Clutches).Any(pair =>
            Far(pair.First.FillMs, pair.Second.FillMs) || Far(pair.First.HoldsMs, pair.Second.HoldsMs)
            || Far(pair.First.LetsGoMs, pair.Second.LetsGoMs) || Far(pair.First.ReleasedMs, pair.Second.ReleasedMs) || Far(pair.First.EmptyMs, pair.Second.EmptyMs));

        static bool Far(double? one, double? other) => one is null != other is null
            || (one is { } a && other is { } b && Math.Abs(a - b) > Math.Max(Apart, 0.01 * Math.Max(Math.Abs(a), Math.Abs(b))));
    }
}
