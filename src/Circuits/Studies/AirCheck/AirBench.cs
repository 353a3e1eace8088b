using System.Collections.Immutable;
using Circuits.Model;
using Circuits.Networks;
using Circuits.Solving;
using Circuits.Stacking;

namespace Circuits.Studies.AirCheck;

/// <summary>
/// Lets air in, in the calculation: what moves, and where it comes out. The pump stands still, the sump is open, valves are where their springs
/// hold them, balls go where the air takes them. Answers depend on nothing but what is asked, and are remembered for the assembly that the bench was
/// made for. Not for use by several threads at once.
/// </summary>
public sealed class AirBench
{
    /// <summary>Less than this is not heard, mm2 at the full pressure of the air: a hole of half a millimetre. Judgement, no source.</summary>
    private const double Audible = 0.2;

    /// <summary>Less than this part of all that comes out is not heard beside the rest. Judgement, no source.</summary>
    private const double BesideOthers = 0.1;

    private readonly Assembly right;
    private readonly ImmutableArray<AirRig> rigs;
    private readonly ImmutableArray<AirOutcome>[] known;

    /// <summary>A bench.</summary>
    /// <param name="assembly">The assembly as it should be; it says where air can be let in.</param>
    /// <param name="lever">The lever's position; <see cref="NeutralOf"/> unless given.</param>
    public AirBench(Assembly assembly, string? lever = null)
    {
        right = assembly;
        Lever = lever ?? NeutralOf(assembly.Unit);
        rigs = AirRigs.Of(assembly);
        Ports = [.. rigs.SelectMany(rig => rig.Ports)];
        known = [.. rigs.Select(rig => Test(rig, assembly))];
    }

    /// <summary>The lever's position; null for a unit without one.</summary>
    public string? Lever { get; }

    /// <summary>Where air can be let in: gauge ports, feeds, then the open faces, in the order of the file.</summary>
    public ImmutableArray<AirPort> Ports { get; }

    /// <summary>What should happen at every port, in their order.</summary>
    public ImmutableArray<AirOutcome> Right => [.. known.SelectMany(outcomes => outcomes)];

    /// <summary>
    /// Where the lever stands in neutral: that of the gear called N, else of the first gear that applies nothing, else of the first gear; null for a unit without a lever.
    /// </summary>
    /// <param name="unit">The unit.</param>
    public static string? NeutralOf(Unit unit)
    {
        var gear = unit.Gears.FirstOrDefault(gear => gear.Name == "N") ?? unit.Gears.FirstOrDefault(gear => gear.Apply.IsEmpty) ?? unit.Gears.FirstOrDefault();
        return gear?.Lever?.Name;
    }

    /// <summary>What happens at every port of an assembly that differs from the right one, in the order of <see cref="Ports"/>.</summary>
    /// <param name="assembly">The right assembly with changes.</param>
    public ImmutableArray<AirOutcome> Test(Assembly assembly)
    {
        var outcomes = ImmutableArray.CreateBuilder<AirOutcome>(Ports.Length);
        for (var i = 0; i < rigs.Length; i++) outcomes.AddRange(rigs[i].IsSame(assembly, right) ? known[i] : Test(rigs[i], assembly));
        return outcomes.MoveToImmutable();
    }

    /// <summary>What happens at one port.</summary>
    /// <param name="assembly">The right assembly with changes.</param>
    /// <param name="port">One of <see cref="Ports"/>, or of another bench for the same assembly; its name counts.</param>
    /// <exception cref="ArgumentException">There is no such port.</exception>
    public AirOutcome Test(Assembly assembly, AirPort port)
    {
        for (var i = 0; i < rigs.Length; i++)
        {
            var found = rigs[i].Ports.FirstOrDefault(its => its.Name == port.Name && its.Kind == port.Kind);
            if (found is null) continue;
            return rigs[i].IsSame(assembly, right) ? known[i][rigs[i].Ports.IndexOf(found)] : Test(rigs[i] with { Ports = [found] }, assembly)[0];
        }

        throw new ArgumentException($"no port {port.Name} on this bench", nameof(port));
    }

    private ImmutableArray<AirOutcome> Test(AirRig rig, Assembly assembly)
    {
        if (rig.Ports.IsEmpty) return [];
        var bench = rig.On(assembly, Lever);
        var network = NetworkBuilder.BuildOpen(bench, joint => JointStacker.Stack(bench, joint, (_, _) => { }));
        var solve = SolvedAssembly.OneByOne(Plan.Of(network));
        return [.. rig.Ports.Select((port, index) => OutcomeOf(solve(index), bench.Unit.Gears[index], rig.IsOpenElsewhere(assembly, port)))];
    }

    private static AirOutcome OutcomeOf(GearSolution solution, GearState port, bool isOpenElsewhere)
    {
        var network = solution.Network;
        var thresholds = network.Assembly.Unit.Thresholds;
        var clutches = network.Clutches.Select(clutch =>
        {
            var share = (solution.PressureAt(clutch.Chamber) - (clutch.ReleaseShare * solution.PressureAt(clutch.ReleaseChamber))) / AirRig.Air;
            return KeyValuePair.Create(clutch.Clutch.Name, share >= thresholds.Applied ? AirMove.Moves : share >= thresholds.Weak ? AirMove.May : AirMove.Stays);
        });
        var exits = Exits(solution, port, isOpenElsewhere);
        var total = exits.Sum(exit => exit.SquareMillimetres);
        var (below, what) = GivingWay(solution);
        return new AirOutcome(
            solution.Settled, [.. clutches],
            [.. exits.Select(exit => exit with { Heard = exit.SquareMillimetres >= Math.Max(Audible, BesideOthers * total) }).OrderByDescending(exit => exit.SquareMillimetres)])
        {
            HoldsBelow = below,
            GivesWay = what,
        };
    }

    private static List<AirHiss> Exits(GearSolution solution, GearState port, bool isOpenElsewhere)
    {
        var network = solution.Network;
        var exits = new List<AirHiss>();
        foreach (var link in network.Links)
        {
            if ((link.A != 0 && link.B != 0) || !solution.IsOpen(link)) continue;
            var node = link.Other(0);
            var share = solution.PressureAt(node) / AirRig.Air;
            if (share < 1e-4) continue;

            // What covers the port's own openings keeps the air in.
            var onFace = link.Place.File.Length == 0;
            if (onFace && share > 1 - 1e-9 && !isOpenElsewhere && IsPort(network, node, port)) continue;
            var amount = Math.Min(link.SquareMillimetres, 1000) * Math.Sqrt(share);
            var at = ExitText.Of(network, link, onFace);
            var same = exits.FindIndex(exit => exit.At == at);
            if (same < 0) exits.Add(new AirHiss(at, amount, false, onFace ? network.Nodes[node].Place : link.Place));
            else exits[same] = exits[same] with { SquareMillimetres = exits[same].SquareMillimetres + amount };
        }

        return exits;
    }

    private static bool IsPort(Network network, int node, GearState port) => port.Signals is [var air] && network.FindNode(air.At.Name) == node;

    /// <summary>The first spring that stronger air would overcome. Pressures all rise with the air's while nothing moves.</summary>
    private static (double Below, string? What) GivingWay(GearSolution solution)
    {
        var (least, what) = (double.PositiveInfinity, (string?)null);
        var network = solution.Network;
        for (var i = 0; i < network.Spools.Length; i++)
        {
            var spool = network.Spools[i];
            if (spool.Stuck is not null || solution.Moved[i]) continue;
            var push = spool.MovedBy.Sum(signal => signal.Factor * solution.PressureAt(signal.Node)) - spool.HeldBy.Sum(signal => signal.Factor * solution.PressureAt(signal.Node));
            if (push > 0) Take(AirRig.Air * spool.Springs / push, spool.Name);
        }

        foreach (var regulator in network.Regulators)
        {
            if (regulator.Solenoid is not null || regulator.Spring <= 0) continue;
            var signals = regulator.SetBy.Sum(signal => signal.Factor * solution.PressureAt(signal.Node));
            var push = solution.PressureAt(regulator.Out) - signals;
            if (push > 0) Take(AirRig.Air * regulator.Spring / push, regulator.Name);
        }

        return (least, what);

        void Take(double kilopascals, string name)
        {
            if (kilopascals < least) (least, what) = (kilopascals, name);
        }
    }
}
