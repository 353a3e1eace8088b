using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Model;
using QuikGraph.Collections;

namespace Circuits.Driveline;

/// <summary>Two shafts that a coupling ties together.</summary>
/// <param name="Coupling">The coupling.</param>
/// <param name="A">The shaft of its first member.</param>
/// <param name="B">The shaft of its second.</param>
internal readonly record struct ShaftPair(Coupling Coupling, int A, int B);

/// <summary>Which member sits on which shaft, once those that always turn together are one.</summary>
internal sealed class Shafts
{
    private const int Unnumbered = -1;

    private static readonly ImmutableArray<string> Ends = ["input", "output"];

    private readonly Dictionary<string, int> ids = new(StringComparer.Ordinal);
    private readonly List<string> names = [];
    private readonly ForestDisjointSet<int> shafts = new();
    private readonly HashSet<string> planetaries = new(StringComparer.Ordinal);
    private readonly ImmutableArray<Finding>.Builder faults;
    private int[] numbers = [];

    /// <summary>Numbers the shafts of a gear set.</summary>
    /// <param name="set">The gear set.</param>
    /// <param name="faults">Gets what is wrong with it.</param>
    public Shafts(GearSet set, ImmutableArray<Finding>.Builder faults)
    {
        this.faults = faults;
        foreach (var planetary in set.Planetaries) planetaries.Add(planetary.Name);
        var fixedMember = Id("case");
        foreach (var planetary in set.Planetaries)
        {
            Id($"{planetary.Name}.sun");
            Id($"{planetary.Name}.carrier");
            Id($"{planetary.Name}.ring");
        }

        Merge(Id("input"), set.Input is { } input ? Id(input) : null);
        Merge(Id("output"), Id(set.Output));
        if (set.Input is { } fixedInput) RefuseCase("input", fixedInput.Place, fixedMember);
        RefuseCase("output", set.Output.Place, fixedMember);
        foreach (var joint in set.Joined) Join(joint, fixedMember);
        foreach (var coupling in (ImmutableArray<Coupling>)[.. set.Clutches, .. set.OneWay])
        {
            if (Id(coupling.A) is { } a && Id(coupling.B) is { } b && shafts.AreInSameSet(a, b))
            {
                this.faults.Add(CouplingWithoutEffect.Rule.At(
                    coupling.Place, $"{coupling.Name} ties {coupling.A.Name} to {coupling.B.Name}, which turn together anyway"));
            }
        }

        Number(fixedMember);
    }

    /// <summary>How many shafts can turn; the case has this number.</summary>
    public int Count { get; private set; }

    /// <summary>Every member that can be asked for, with its shaft: planetaries first, then the others as they appear.</summary>
    public ImmutableArray<KeyValuePair<string, int>> Members => [.. names.Where(name => name != "case").Select(name => KeyValuePair.Create(name, Of(name)))];

    /// <summary>The shaft of a member that is known to exist.</summary>
    public int Of(string name) => numbers[ids[name]];

    /// <summary>The shafts that couplings tie together.</summary>
    public ImmutableArray<ShaftPair> Pairs(ImmutableArray<Coupling> couplings) =>
        [.. couplings.Select(coupling => new ShaftPair(coupling, Of(coupling.A.Name), Of(coupling.B.Name)))];

    private void RefuseCase(string end, Place place, int fixedMember)
    {
        if (!shafts.AreInSameSet(ids[end], fixedMember)) return;
        faults.Add(GearsetCannotTurn.Rule.At(place, $"the case cannot be the {end}: it never turns"));
    }

    private void Join(Coupling joint, int fixedMember)
    {
        if (Id(joint.A) is not { } a || Id(joint.B) is not { } b) return;
        if (shafts.AreInSameSet(a, b))
        {
            faults.Add(CouplingWithoutEffect.Rule.At(
                joint.Place, $"{joint.A.Name} and {joint.B.Name} are joined twice over"));
            return;
        }

        var wereFree = Ends.Where(name => !shafts.AreInSameSet(ids[name], fixedMember)).ToList();
        Merge(a, b);
        foreach (var name in wereFree)
        {
            if (!shafts.AreInSameSet(ids[name], fixedMember)) continue;
            faults.Add(GearsetCannotTurn.Rule.At(
                joint.Place, $"joining {joint.A.Name} to {joint.B.Name} ties the {name} to the case",
                "If this is a brake that only some gears apply, list it under `clutches`."));
        }
    }

    private int? Id(Member member)
    {
        var name = member.Name;
        var dot = name.IndexOf('.', StringComparison.Ordinal);
        if (dot < 0 ? !planetaries.Contains(name) : ids.ContainsKey(name)) return Id(name);
        var problem = dot < 0
            ? Phrase.Of($"{name} is a planetary: name its sun, carrier or ring")
            : planetaries.Contains(name[..dot])
                ? Phrase.Of($"{name}: a planetary has a sun, a carrier and a ring")
                : Phrase.Of($"{name}: there is no planetary {name[..dot]}");
        faults.Add(UnknownMember.Rule.At(member.Place, problem));
        return null;
    }

    private int Id(string name)
    {
        if (ids.TryGetValue(name, out var id)) return id;
        id = names.Count;
        ids.Add(name, id);
        names.Add(name);
        shafts.MakeSet(id);
        return id;
    }

    private void Merge(int a, int? b)
    {
        if (b is { } other) shafts.Union(a, other);
    }

    private void Number(int fixedMember)
    {
        var numberOfRoot = new Dictionary<int, int>();
        numbers = new int[names.Count];
        for (var id = 0; id < numbers.Length; id++)
        {
            if (shafts.AreInSameSet(id, fixedMember))
            {
                numbers[id] = Unnumbered;
                continue;
            }

            var root = shafts.FindSet(id);
            if (!numberOfRoot.TryGetValue(root, out var number)) numberOfRoot.Add(root, number = numberOfRoot.Count);
            numbers[id] = number;
        }

        Count = numberOfRoot.Count;
        for (var id = 0; id < numbers.Length; id++)
        {
            if (numbers[id] == Unnumbered) numbers[id] = Count;
        }
    }
}
