using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Model;

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

    private readonly Dictionary<string, int> _ids = new(StringComparer.Ordinal);
    private readonly List<string> _names = [];
    private readonly List<int> _parents = [];
    private readonly HashSet<string> _planetaries;
    private readonly ImmutableArray<Finding>.Builder _faults;
    private int[] _numbers = [];

    /// <summary>Numbers the shafts of a gear set.</summary>
    /// <param name="set">The gear set.</param>
    /// <param name="faults">Gets what is wrong with it.</param>
    public Shafts(GearSet set, ImmutableArray<Finding>.Builder faults)
    {
        _faults = faults;
        _planetaries = new HashSet<string>(set.Planetaries.Select(planetary => planetary.Name), StringComparer.Ordinal);
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
        foreach (var coupling in set.Clutches.Concat(set.OneWay))
        {
            if (Id(coupling.A) is { } a && Id(coupling.B) is { } b && Root(a) == Root(b))
            {
                _faults.Add(CouplingWithoutEffect.Rule.At(
                    coupling.Place, $"{coupling.Name} ties {coupling.A.Name} to {coupling.B.Name}, which turn together anyway"));
            }
        }

        Number(Root(fixedMember));
    }

    /// <summary>How many shafts can turn; the case has this number.</summary>
    public int Count { get; private set; }

    /// <summary>Every member that can be asked for, with its shaft: planetaries first, then the others as they appear.</summary>
    public ImmutableArray<KeyValuePair<string, int>> Members =>
        [.. _names.Select((name, id) => KeyValuePair.Create(name, _numbers[id])).Where(member => member.Key != "case")];

    /// <summary>The shaft of a member that is known to exist.</summary>
    public int Of(string name) => _numbers[_ids[name]];

    /// <summary>The shafts that couplings tie together.</summary>
    public ImmutableArray<ShaftPair> Pairs(ImmutableArray<Coupling> couplings) =>
        [.. couplings.Select(coupling => new ShaftPair(coupling, Of(coupling.A.Name), Of(coupling.B.Name)))];

    private void RefuseCase(string end, Place place, int fixedMember)
    {
        if (Root(_ids[end]) != Root(fixedMember)) return;
        _faults.Add(GearsetCannotTurn.Rule.At(place, $"the case cannot be the {end}: it never turns"));
    }

    private void Join(Coupling joint, int fixedMember)
    {
        if (Id(joint.A) is not { } a || Id(joint.B) is not { } b) return;
        if (Root(a) == Root(b))
        {
            _faults.Add(CouplingWithoutEffect.Rule.At(
                joint.Place, $"{joint.A.Name} and {joint.B.Name} are joined twice over"));
            return;
        }

        var wereFree = Ends.Where(name => Root(_ids[name]) != Root(fixedMember)).ToArray();
        Merge(a, b);
        foreach (var name in wereFree)
        {
            if (Root(_ids[name]) != Root(fixedMember)) continue;
            _faults.Add(GearsetCannotTurn.Rule.At(
                joint.Place, $"joining {joint.A.Name} to {joint.B.Name} ties the {name} to the case",
                "If this is a brake that only some gears apply, list it under `clutches`."));
        }
    }

    private int? Id(Member member)
    {
        var name = member.Name;
        var dot = name.IndexOf('.', StringComparison.Ordinal);
        if (dot < 0 ? !_planetaries.Contains(name) : _ids.ContainsKey(name)) return Id(name);
        var problem = dot < 0
            ? $"{name} is a planetary: name its sun, carrier or ring"
            : _planetaries.Contains(name[..dot])
                ? $"{name}: a planetary has a sun, a carrier and a ring"
                : $"{name}: there is no planetary {name[..dot]}";
        _faults.Add(UnknownMember.Rule.At(member.Place, problem));
        return null;
    }

    private int Id(string name)
    {
        if (_ids.TryGetValue(name, out var id)) return id;
        id = _names.Count;
        _ids.Add(name, id);
        _names.Add(name);
        _parents.Add(id);
        return id;
    }

    private void Merge(int a, int? b)
    {
        if (b is { } other) _parents[Root(a)] = Root(other);
    }

    private int Root(int id)
    {
        while (_parents[id] != id) id = _parents[id] = _parents[_parents[id]];
        return id;
    }

    private void Number(int fixedRoot)
    {
        var numberOfRoot = new Dictionary<int, int>();
        _numbers = new int[_names.Count];
        for (var id = 0; id < _numbers.Length; id++)
        {
            var root = Root(id);
            if (root == fixedRoot)
            {
                _numbers[id] = Unnumbered;
                continue;
            }

            if (!numberOfRoot.TryGetValue(root, out var number)) numberOfRoot.Add(root, number = numberOfRoot.Count);
            _numbers[id] = number;
        }

        Count = numberOfRoot.Count;
        for (var id = 0; id < _numbers.Length; id++)
        {
            if (_numbers[id] == Unnumbered) _numbers[id] = Count;
        }
    }
}
