using System.Collections.Immutable;
using Circuits.Judging;
using Circuits.Judging.Changes;
using Circuits.Model;
using Circuits.Studies.Shifts;

namespace Circuits.Rendering;

/// <summary>What a person who acts on a report must be told. Common practice of the trade, no source.</summary>
public static class Cautions
{
    /// <summary>The last word on every report.</summary>
    public const string WhoDecides =
        "This is a calculation from a file. The maker's service manual, local rules and a licensed technician decide.";

    /// <summary>For whoever goes and measures.</summary>
    public const string Measuring =
        "Measuring: hot oil burns, and oil under pressure can enter the skin. Wear eye protection, chock the wheels, keep the path clear.";

    /// <summary>For whoever takes up a drill.</summary>
    public const string Drilling =
        "Drilling: it cannot be undone. Begin with the drill below, deburr, wash out every chip, and check again; keep the old plate.";

    /// <summary>For whoever lets air in. The pressure is the manual's to say: manuals disagree.</summary>
    public static ImmutableArray<string> ForAir { get; } =
    [
        "Wear eye protection: air blows out oil and chips. Keep hands off the pistons; they move at once.",
        "How strong the air may be, and how long it may be held, the service manual of the unit says; no number here does.",
        WhoDecides,
    ];

    /// <summary>The cautions that timed shifts call for, most pressing first.</summary>
    /// <param name="report">The report.</param>
    public static ImmutableArray<string> For(ShiftReport report)
    {
        var cautions = ImmutableArray.CreateBuilder<string>();
        Add([ShiftVerdict.TieUp], shifts => $"Do not drive to see what happens: in {shifts} clutches work against each other. The vehicle may brake itself or lurch without warning.");
        Add([ShiftVerdict.Flare, ShiftVerdict.NeverHolds], shifts => $"Do not load it: in {shifts} too little holds the torque. The engine runs up, and clutches burn.");
        cautions.Add(WhoDecides);
        return cautions.ToImmutable();

        void Add(ShiftVerdict[] verdicts, Func<string, string> sentence)
        {
            var names = report.Shifts.Where(pair => verdicts.Contains(pair.Here.Verdict)).Select(pair => pair.Here.Plan.Name).ToList();
            if (names.Count > 0) cautions.Add(sentence((names.Count == 1 ? "shift " : "shifts ") + string.Join(", ", names)));
        }
    }

    /// <summary>The cautions that this report calls for, most pressing first.</summary>
    /// <param name="report">The report.</param>
    /// <param name="pressures">Whether it gives pressures that someone may go and measure.</param>
    public static ImmutableArray<string> For(AssemblyReport report, bool pressures)
    {
        var cautions = ImmutableArray.CreateBuilder<string>();
        var binding = report.Gears.Where(gear => gear.Drive?.Mobility == 0 || Has(gear, Verdict.Unwanted));
        var lost = report.Gears.Where(gear => Has(gear, Verdict.Lost) || gear.Verdict == Verdict.NeverSettles);
        Add(binding, gears => $"Do not drive to see what happens: in {gears} a clutch holds that should not. "
            + "The drive may lock, and the vehicle may lurch or stop without warning.");
        Add(lost, gears => $"Do not drive to see what happens: in {gears} drive is lost or uncertain. "
            + "The vehicle may not move, may roll, or may not come back.");
        Add(report.Gears.Where(gear => Has(gear, Verdict.Weak)), gears =>
            $"Do not load it: in {gears} a clutch has too little pressure; it slips, and burns within minutes.");
        Add(report.Gears.Where(gear => gear.Conditions.Any(condition => condition.Needs.Any(need => need.Verdict == Verdict.Starved))), gears =>
            $"Do not run it: in {gears} a part of the unit runs dry. Nothing may be felt until it seizes.");
        Add(report.Gears.Where(gear => gear.Conditions.Any(condition => condition.Needs.Any(need => need.Verdict == Verdict.OverPressure))), gears =>
            $"Do not run it: in {gears} a part has more pressure than it is made for, and may burst. Hot oil burns.");
        Add(report.Gears.Where(gear => gear.Verdict == Verdict.DidNotConverge), gears =>
            $"Do not trust it: in {gears} no pressures were found at which all flows balance.");
        if (pressures)
        {
            cautions.Add(Measuring);
        }

        cautions.Add(WhoDecides);
        return cautions.ToImmutable();

        // A gear's verdict is its worst clutch; a caution is for each clutch that calls for it.
        static bool Has(GearReport gear, Verdict verdict) => gear.Clutches.Any(clutch => clutch.Verdict == verdict);

        void Add(IEnumerable<GearReport> gears, Func<string, string> sentence)
        {
            var names = gears.Select(gear => gear.Gear).ToList();
            if (names.Count > 0) cautions.Add(sentence((names.Count == 1 ? "gear " : "gears ") + string.Join(", ", names)));
        }
    }
}
