using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Judging;
using Circuits.Model;
using Circuits.Studies.AirCheck;

namespace Circuits.Studies.Diagnosis;

/// <summary>What is no fault of the hydraulics and feels the same. Common practice of the trade, no source.</summary>
internal static class LookAlikes
{
    public static ImmutableArray<Phrase> Of(Unit unit, ImmutableArray<Evidence> evidence)
    {
        var felt = evidence.OfType<Evidence.Felt>().Where(item => !item.IsHealthy).SelectMany(item => item.In).ToList();
        var found = ImmutableArray.CreateBuilder<Phrase>();
        if (felt.Exists(In(FeelKind.TieUp)))
        {
            found.Add(Phrase.Of($"A mechanical lock: engine off, lever still in the range that binds, push the vehicle. Rolls both ways: hydraulics. Rolls one way: mechanical."));
            if (felt.Where(item => In(FeelKind.TieUp)(item)).All(item => IsReverse(unit, item.Gear)))
                found.Add(Phrase.Of($"Worn splines can bind in reverse only."));
        }

        if (felt.Exists(item => In(FeelKind.NoDrive)(item) || In(FeelKind.Slips)(item)))
        {
            found.AddRange(Shared(unit, felt));
            if (unit.GearSet is { OneWay.IsEmpty: false } set)
                found.Add(Phrase.Of($"A one-way clutch that no longer holds ({set.OneWay.Select(clutch => clutch.Name)}) gives no drive, and no pressure shows it."));
            found.Add(Phrase.Of($"A clutch whose plates are burnt, or a broken shaft or converter, slips or gives no drive at full pressure: compare the clutch's tap."));
        }

        if (felt.Exists(In(FeelKind.CreepsForward)) || felt.Exists(In(FeelKind.Drags)))
            found.Add(Phrase.Of($"Plates that are warped or welded together drag without any oil: the clutch's tap then reads nothing."));
        if (felt.Exists(In(FeelKind.Harsh)) || felt.Exists(In(FeelKind.Delayed)))
            found.Add(Phrase.Of($"What the control unit commands (its software, its idea of load and temperature, wiring, mounts) makes shifts harsh or late; this knows the commands of the file alone."));
        var stays = evidence.OfType<AirEvidence>().Where(air => air.Notice == AirNotice.Stays && air.Right.MoveOf(air.At!) == AirMove.Moves).Select(air => air.At!).Distinct().ToList();
        if (stays.Count > 0) found.Add(Phrase.Of($"A piston that sticks, or whose seal lets all air past, does not move though every passage is right: {stays}."));
        return found.ToImmutable();
    }

    private static Predicate<FeltIn> In(FeelKind kind) => felt => felt.Fits.Any(fit => fit.Kind == kind && fit.Degree >= 1);

    private static bool IsReverse(Unit unit, int gear) => unit.Gears[gear].Ratio is < 0 || unit.Gears[gear].Name is "R";

    /// <summary>A clutch that every gear of the complaint needs: its piston may be at fault, which a lost feed looks just like.</summary>
    private static IEnumerable<Phrase> Shared(Unit unit, List<FeltIn> felt)
    {
        var gears = felt.Where(item => In(FeelKind.NoDrive)(item) || In(FeelKind.Slips)(item)).Select(item => unit.Gears[item.Gear]).ToList();
        var shared = unit.Clutches.Select(clutch => clutch.Name).Where(name => gears.TrueForAll(gear => gear.Apply.Any(use => use.Name == name))).ToList();
        if (shared.Count == 0) yield break;
        yield return Phrase.Of($"A piece that cuts the piston seal of {string.Join(" or ", shared)} loses every gear of that clutch, exactly like a lost feed: air to the clutch tells.");
    }
}
