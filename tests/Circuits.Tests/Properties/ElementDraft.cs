using System.Collections.Immutable;

namespace Circuits.Tests.Properties;

/// <summary>Draws what moves, and what joins passages inside parts.</summary>
internal sealed class ElementDraft(Dice dice, List<Casting> castings, Func<string, string> name)
{
    private const int MostMoving = 10;

    private readonly Dictionary<string, RevisionSpec> revisions = castings.ToDictionary(casting => casting.Name, _ => new RevisionSpec("r1"));
    private readonly List<string> levers = dice.Chance(50) ? [name("m"), name("m"), name("m")] : [];
    private readonly HashSet<Ref> fed = [];
    private readonly HashSet<(string, string)> seats = [];
    private RevisionSpec ballSet = new("r1");
    private RevisionSpec solenoidPack = new("r1");
    private int moving;

    public Ref PumpInto { get; private set; }

    private Ref Line => castings[0].Of("p0");

    public void Draw()
    {
        PumpInto = castings[1].Has("p0") && dice.Chance(30) ? castings[1].Of("p0") : Line;
        DrawLineRegulator();
        for (var n = dice.Next(5); n > 0; n--) AddValve(dice.Pick(castings));
        for (var n = dice.Next(4); n > 0; n--) AddBall(dice.Pick(castings));
        for (var n = dice.Next(3); n > 0; n--) AddReducing(dice.Pick(castings));
        if (dice.Chance(30)) AddRelief(dice.Pick(castings));
        for (var n = dice.Next(3); n > 0; n--) AddSolenoid(dice.Pick(castings));
        if (levers.Count > 0) AddLever(castings[0]);
        for (var n = dice.Next(3); n > 0; n--)
            Change(dice.Pick(castings), (revision, casting) => revision with { Restrictions = revision.Restrictions.Add(Hole(casting, 0.6, 3)) });
        if (dice.Chance(20)) Change(dice.Pick(castings), (revision, casting) => revision with { Leaks = revision.Leaks.Add(Hole(casting, 0.2, 0.8)) });
    }

    /// <summary>A casting's one revision with everything drawn for it.</summary>
    public RevisionSpec Revision(Casting casting) => revisions[casting.Name] with
    {
        Passages = [.. casting.Passages.Select(passage => new PassageSpec(passage.Name, [.. passage.At]))],
    };

    /// <summary>Parts that hold nothing but balls or solenoids.</summary>
    public IEnumerable<PartSpec> Packs()
    {
        if (!ballSet.Balls.IsEmpty) yield return new PartSpec("y1", "ball-set", [ballSet]);
        if (!solenoidPack.Solenoids.IsEmpty) yield return new PartSpec("y2", "solenoid-pack", [solenoidPack]);
    }

    public IEnumerable<ClutchSpec> Clutches()
    {
        for (var n = dice.Between(1, 3); n > 0; n--)
        {
            Ref? release = dice.Chance(15) ? Any(dice.Pick(castings)) : null;
            var at = Any(castings[^1], notLine: true);
            yield return new ClutchSpec(name("k"), at, release == at ? null : release, dice.Real(2000, 9000), dice.Real(1000, 6000));
        }
    }

    public IEnumerable<GearSpec> Gears(UnitSpec unit)
    {
        var solenoids = unit.Parts.SelectMany(part => part.Revisions[0].Solenoids).ToList();
        for (var n = dice.Between(1, 3); n > 0; n--)
        {
            var signals = new List<(Ref, double)>();
            if (dice.Chance(30)) signals.Add((Any(castings[0], notLine: true), dice.Real(0, 600)));
            yield return new GearSpec(name("g"), [.. unit.Clutches.Where(_ => dice.Chance(50)).Select(clutch => clutch.Name)])
            {
                Lever = levers.Count > 0 ? dice.Pick(levers) : null,
                Energize = [.. solenoids.Where(_ => dice.Chance(40)).Select(solenoid => solenoid.Name)],
                Commands = [.. solenoids.Where(solenoid => solenoid.IsPressure && dice.Chance(70)).Select(solenoid => (solenoid.Name, dice.Real(0, 700)))],
                Signals = [.. signals],
            };
        }
    }

    private void Change(Casting casting, Func<RevisionSpec, Casting, RevisionSpec> change) =>
        revisions[casting.Name] = change(revisions[casting.Name], casting);

    private Ref Any(Casting casting, bool notLine = false)
    {
        while (true)
        {
            var passage = casting.Of(dice.Pick(casting.Passages).Name);
            if (!notLine || passage.Passage != "p0") return passage;
        }
    }

    /// <summary>Often line, sometimes the sump, else any passage of the casting.</summary>
    private Ref End(Casting casting)
    {
        var roll = dice.Next(100);
        if (roll < 25) return casting.Has("p0") ? casting.Of("p0") : Line;
        return roll < 45 ? Ref.Sump : Any(casting);
    }

    private Ref Signal(Casting casting) => dice.Chance(85) ? Any(casting) : Any(dice.Pick(castings));

    private double? Maybe(double least, double most) => dice.Chance(60) ? dice.Real(least, most) : null;

    private void DrawLineRegulator()
    {
        if (dice.Chance(8)) return;
        for (var n = dice.Chance(8) ? 2 : 1; n > 0; n--)
        {
            var outlets = dice.Chance(50) ? [Any(castings[0], notLine: true), Ref.Sump] : ImmutableArray.Create(Ref.Sump);
            var boost = dice.Chance(35) ? [(Any(castings[0], notLine: true), dice.Real(0.1, 0.6))] : ImmutableArray<(Ref, double)>.Empty;
            var regulator = new RegulatorSpec(name("q"), Line, outlets, null, null, null, dice.Real(350, 900), boost, Maybe(4, 40));
            Change(castings[0], (revision, _) => revision with { Regulators = revision.Regulators.Add(regulator) });
        }
    }

    private bool Moves() => moving++ < MostMoving;

    private void AddValve(Casting casting)
    {
        if (!Moves()) return;
        var held = new List<ForceSpec> { new(null, null, dice.Real(0, 60)) };
        if (dice.Chance(35)) held.Add(new ForceSpec(Signal(casting), Maybe(20, 120), 0));
        var movedBy = Enumerable.Range(0, dice.Between(1, 2)).Select(_ => new ForceSpec(Signal(casting), Maybe(50, 160), 0)).ToImmutableArray();
        var valve = new ValveSpec(name("v"), Ports(casting), Ports(casting), movedBy, [.. held]);
        Change(casting, (revision, _) => revision with { Valves = revision.Valves.Add(valve) });
    }

    private ImmutableArray<PortSpec> Ports(Casting casting) =>
        [.. Enumerable.Range(0, dice.Between(1, 3)).Select(_ => Port(casting)).OfType<PortSpec>()];

    private PortSpec? Port(Casting casting)
    {
        var ends = Enumerable.Range(0, dice.Chance(12) ? 3 : 2).Select(_ => End(casting)).Distinct().ToImmutableArray();
        return ends.Length < 2 ? null : new PortSpec(ends, Maybe(5, 60));
    }

    private void AddBall(Casting casting)
    {
        var inPack = dice.Chance(30);
        var pockets = casting.Passages.Where(passage => passage.At.Count > 0 && (passage.Name != "p0" || dice.Chance(20))).ToList();
        if (pockets.Count == 0 || !Moves()) return;
        var pocket = dice.Pick(pockets);
        var list = new List<SeatSpec>();
        foreach (var (joint, location) in dice.Shuffle(pocket.At).Take(dice.Chance(60) ? 2 : 1))
        {
            if (seats.Add((joint, location))) list.Add(new SeatSpec(joint, location, null, 0));
        }

        if (list.Count < 2 && dice.Chance(list.Count == 0 ? 100 : 40)) list.Add(new SeatSpec(null, null, Beyond(casting, pocket.Name), dice.Real(1, 5)));
        var ball = new BallSpec(name("b"), casting.Of(pocket.Name), [.. list], dice.Chance(80) ? 6.35 : null);
        if (inPack) ballSet = ballSet with { Balls = ballSet.Balls.Add(ball) };
        else Change(casting, (revision, _) => revision with { Balls = revision.Balls.Add(ball) });
    }

    private Ref Beyond(Casting casting, string pocket)
    {
        while (true)
        {
            var end = End(casting);
            if (end != casting.Of(pocket)) return end;
        }
    }

    private void AddReducing(Casting casting)
    {
        var (from, to) = (dice.Chance(60) ? Line : Any(casting), dice.Chance(80) ? Ref.Sump : Any(casting, notLine: true));
        var outlet = Any(casting, notLine: true);
        if (from == outlet || to == outlet || !fed.Add(outlet) || !Moves()) return;
        var setBy = Enumerable.Range(0, dice.Next(3)).Select(_ => (Signal(casting), dice.Chance(10) ? -dice.Real(0.2, 0.8) : dice.Real(0.3, 1.8))).ToImmutableArray();
        var regulator = new RegulatorSpec(name("q"), null, [], from, outlet, to.IsSump && dice.Chance(50) ? null : to, dice.Real(0, 400), setBy, Maybe(2, 40));
        Change(casting, (revision, _) => revision with { Regulators = revision.Regulators.Add(regulator) });
    }

    private void AddRelief(Casting casting)
    {
        var held = Any(casting, notLine: true);
        if (revisions[castings[0].Name].Regulators.All(regulator => regulator.Holds is null) || !fed.Add(held) || !Moves()) return;
        var regulator = new RegulatorSpec(name("q"), held, [Ref.Sump], null, null, null, dice.Real(100, 500), [], Maybe(2, 40));
        Change(casting, (revision, _) => revision with { Regulators = revision.Regulators.Add(regulator) });
    }

    private void AddSolenoid(Casting casting)
    {
        var inPack = dice.Chance(40);
        var (feed, outlet) = (dice.Chance(60) ? Line : Any(casting), Any(casting, notLine: true));
        if (feed == outlet || !fed.Add(outlet) || !Moves()) return;
        var solenoid = new SolenoidSpec(name("s"), feed, outlet, null, dice.Chance(50), dice.Chance(30), Maybe(1, 6));
        if (inPack) solenoidPack = solenoidPack with { Solenoids = solenoidPack.Solenoids.Add(solenoid) };
        else Change(casting, (revision, _) => revision with { Solenoids = revision.Solenoids.Add(solenoid) });
    }

    private void AddLever(Casting casting) => Change(casting, (revision, _) => revision with
    {
        Lever = [.. levers.Select(position => (position, Ports(casting)))],
    });

    private HoleSpec Hole(Casting casting, double least, double most)
    {
        var a = Any(casting);
        return new HoleSpec(a, Beyond(casting, a.Passage), SizeSpec.Hole(dice.Real(least, most)));
    }
}
