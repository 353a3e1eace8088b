using System.Collections.Immutable;
using Circuits.Networks;
using Circuits.Solving;

namespace Circuits.Judging;

/// <summary>
/// Finds foreign oil: a circuit that has its oil in the matched set too, and here also feeds a passage of another circuit
/// that it does not feed there.
/// </summary>
internal sealed class CrossFeeds
{
    private const double Level = 0.01;

    /// <summary>Less than this fraction of line pressure in the entered passage feeds nothing; it is a drain.</summary>
    private const double WorthTheName = 0.02;

    /// <summary>A pressure that changes by less than this fraction of line pressure is not moved by it.</summary>
    private const double Moves = 0.05;

    private readonly GearSolution solution;
    private readonly ImmutableArray<GearSolution> reference;
    private readonly Dictionary<(string, string), Meetings> usual;
    private readonly ImmutableArray<ReferencePressures> pressures;

    private CrossFeeds(GearSolution solution, Basis basis)
    {
        this.solution = solution;
        reference = basis.States;
        usual = basis.Usual;
        pressures = basis.Pressures;
    }

    /// <summary>The cross-feeds of a gear against its matched sets; none when it is one, or when there is none.</summary>
    /// <param name="solution">The gear's state.</param>
    /// <param name="basis">The same gear in the matched sets.</param>
    /// <param name="moves">Whether to tell what the foreign oil moves; it takes longer than finding it.</param>
    public static ImmutableArray<CrossFeed> Find(GearSolution solution, Basis basis, bool moves)
    {
        if (basis.States.IsEmpty) return [];
        foreach (var state in basis.States)
        {
            if (ReferenceEquals(state, solution)) return [];
        }

        return new CrossFeeds(solution, basis).Find(moves);
    }

    /// <summary>A gear in the matched sets, made ready to hold others against it.</summary>
    internal sealed class Basis
    {
        public Basis(ImmutableArray<GearSolution> states)
        {
            States = states;
            Pressures = [.. States.Select(state => new ReferencePressures(state))];
            foreach (var state in States)
            {
                foreach (var contact in ContactsOf(state, eitherWay: true))
                {
                    var circuits = (state.Network.Nodes[contact.From].Circuit!, state.Network.Nodes[contact.To].Circuit!);
                    if (!Usual.TryGetValue(circuits, out var ways)) Usual.Add(circuits, ways = new Meetings());
                    ways.Add(contact.Link);
                }
            }
        }

        public ImmutableArray<GearSolution> States { get; }

        /// <summary>Circuits whose oil meets there.</summary>
        public Dictionary<(string, string), Meetings> Usual { get; } = [];

        public ImmutableArray<ReferencePressures> Pressures { get; }
    }

    /// <summary>Ways by which the oil of two circuits meets.</summary>
    internal sealed class Meetings
    {
        private readonly HashSet<Link> links = new(ReferenceEqualityComparer.Instance);
        private readonly HashSet<string> elements = [];

        public void Add(Link link)
        {
            if (links.Add(link)) elements.Add(link.Element);
        }

        public bool Has(Link link) => elements.Contains(link.Element);

        /// <summary>The area of all of them.</summary>
        public double Area => links.Sum(link => link.SquareMillimetres);
    }

    private ImmutableArray<CrossFeed> Find(bool moves)
    {
        var found = new Dictionary<(string, string, string), CrossFeed>();
        var contacts = ContactsOf(solution, eitherWay: false);
        var beside = Beside(contacts);
        foreach (var contact in contacts)
        {
            if (!IsForeign(contact, beside)) continue;
            var (into, from) = (solution.Network.Nodes[contact.To].Name, solution.Network.Nodes[contact.From].Name);
            var link = contact.Link;
            found.TryAdd((into, from, link.Element), new CrossFeed(
                into, from, link.Element, link.Part, link.Revision, moves ? MovedBeyond(contact.To) : [], link.Place)
            { IsBesideUsual = usual.ContainsKey(CircuitsOf(contact)) });
        }

        return [.. found.Values.OrderBy(feed => feed.Into, StringComparer.Ordinal).ThenBy(feed => feed.Through, StringComparer.Ordinal)];
    }

    /// <summary>Ways between circuits that meet in the matched sets too, and there by other ways: a bleed does not excuse a hole beside it.</summary>
    private Dictionary<(string, string), Meetings> Beside(List<Contact> contacts)
    {
        var beside = new Dictionary<(string, string), Meetings>();
        foreach (var contact in contacts)
        {
            var circuits = CircuitsOf(contact);
            if (!usual.TryGetValue(circuits, out var known) || known.Has(contact.Link)) continue;
            if (!beside.TryGetValue(circuits, out var ways)) beside.Add(circuits, ways = new Meetings());
            ways.Add(contact.Link);
        }

        return beside;
    }

    private (string, string) CircuitsOf(Contact contact) => (solution.Network.Nodes[contact.From].Circuit!, solution.Network.Nodes[contact.To].Circuit!);

    private bool IsForeign(Contact contact, Dictionary<(string, string), Meetings> beside)
    {
        var (from, to) = (solution.Network.Nodes[contact.From], solution.Network.Nodes[contact.To]);
        if (solution.PressureAt(contact.To) < WorthTheName * solution.Line) return false;
        if (StandsElsewhere(contact.Link)) return false;
        var least = Level;
        if (usual.TryGetValue(CircuitsOf(contact), out var known))
        {
            if (known.Has(contact.Link) || !(beside[CircuitsOf(contact)].Area > known.Area)) return false;
            least = Moves * solution.Line;
        }

        return pressures.All(before =>
            before.Of(from) > Level && Math.Abs(before.Of(to) - solution.PressureAt(contact.To)) > least);
    }

    /// <summary>
    /// A port that is open only because its valve or solenoid stands elsewhere than in the matched set is a consequence,
    /// not a way in; so is whatever a regulator passes.
    /// </summary>
    private bool StandsElsewhere(Link link) => link.Gate.Kind switch
    {
        GateKind.Regulator => true,
        GateKind.Valve => reference.Any(state => PositionIn(state, solution.Network.Spools[link.Gate.Element].Name) != solution.Moved[link.Gate.Element]),
        GateKind.Solenoid => reference.Any(state => FedIn(state, solution.Network.Switches[link.Gate.Element].Name) != solution.Inputs.Fed[link.Gate.Element]),
        GateKind.Open or GateKind.Shut or GateKind.Ball or GateKind.Lever => false,
    };

    private static bool? PositionIn(GearSolution state, string spool)
    {
        for (var i = 0; i < state.Network.Spools.Length; i++)
        {
            if (state.Network.Spools[i].Name == spool) return state.Moved[i];
        }

        return null;
    }

    private static bool? FedIn(GearSolution state, string solenoid)
    {
        for (var i = 0; i < state.Network.Switches.Length; i++)
        {
            if (state.Network.Switches[i].Name == solenoid) return state.Inputs.Fed[i];
        }

        return null;
    }

    /// <summary>What stands elsewhere than in the matched set and is acted on by oil downstream of the way in.</summary>
    private ImmutableArray<Moved> MovedBeyond(int entered)
    {
        var downstream = Downstream(entered);
        var moves = new List<Moved>();
        for (var i = 0; i < solution.Network.Spools.Length; i++)
        {
            var spool = solution.Network.Spools[i];
            if (!spool.MovedBy.Concat(spool.HeldBy).Any(signal => downstream.Contains(signal.Node))) continue;
            var before = reference.Select(state => PositionIn(state, spool.Name)).FirstOrDefault();
            if (before is { } was && was != solution.Moved[i])
                moves.Add(new Moved.Valve(spool.Name, new Stand.Spool(solution.Moved[i], null), new Stand.Spool(was, null)));
        }

        foreach (var clutch in solution.Network.Clutches)
        {
            if (clutch.Chamber < 0 || !downstream.Contains(clutch.Chamber)) continue;
            var was = reference.Max(state => NetPressure.Of(state.Network.Clutches.First(other => other.Clutch.Name == clutch.Clutch.Name), state));
            if (Math.Abs(NetPressure.Of(clutch, solution) - was) > Moves * solution.Line) moves.Add(new Moved.Clutch(clutch.Clutch.Name));
        }

        return [.. moves];
    }

    /// <summary>What the oil reaches: through open links, and on from the outlets of regulators that it sets.</summary>
    private HashSet<int> Downstream(int entered)
    {
        var reached = new HashSet<int>();
        var starts = new Queue<int>([entered]);
        while (starts.TryDequeue(out var start))
        {
            reached.UnionWith(OilGraph.Reached(
                solution.Network, start,
                (link, from, to) => to != 0 && solution.IsOpen(link) && solution.PressureAt(from) >= solution.PressureAt(to) - Level));
            foreach (var regulator in solution.Network.Regulators)
            {
                if (regulator.Out > 0 && !reached.Contains(regulator.Out) && !starts.Contains(regulator.Out)
                    && regulator.Kind == RegulatorKind.Reducing && regulator.SetBy.Any(signal => reached.Contains(signal.Node)))
                {
                    starts.Enqueue(regulator.Out);
                }
            }
        }

        return reached;
    }

    /// <summary>
    /// Where oil under pressure passes from a passage of one circuit to a passage of another; a slot at which several meet
    /// gives a contact for each pair, and so do openings of several sheets that lie on one another.
    /// </summary>
    /// <param name="state">The state.</param>
    /// <param name="eitherWay">Whether what may have gone either way counts as both, or as neither.</param>
    private static List<Contact> ContactsOf(GearSolution state, bool eitherWay)
    {
        var contacts = new List<Contact>();
        var network = state.Network;
        var clusters = OpeningClusters(state);
        var meeting = new Dictionary<int, List<(int Passage, Link Link, int Opening)>>();
        var between = new Dictionary<int, Link>();
        foreach (var link in network.Links)
        {
            if (!state.IsOpen(link) || link.Kind == LinkKind.Chamber) continue;
            var (a, b) = (network.Nodes[link.A], network.Nodes[link.B]);
            if (a.Circuit is not null && b.Circuit is not null)
            {
                AddDirected(contacts, state, link.A, link.B, link, eitherWay);
            }
            else if (a.Kind == NodeKind.Opening && b.Kind == NodeKind.Opening)
            {
                between[clusters[link.A]] = Narrower(between.GetValueOrDefault(clusters[link.A], link), link);
            }
            else
            {
                Meet(a, b, link);
                Meet(b, a, link);
            }
        }

        foreach (var (cluster, met) in meeting)
        {
            for (var i = 0; i < met.Count; i++)
            {
                for (var j = i + 1; j < met.Count; j++)
                {
                    var through = Narrower(met[i].Link, met[j].Link);
                    if (double.IsInfinity(through.SquareMillimetres) && between.TryGetValue(cluster, out var inner)) through = inner;
                    var (first, second) = (met[i], met[j]);
                    var before = contacts.Count;
                    AddDirected(contacts, state, first.Passage, second.Passage, through, eitherWay);
                    for (var at = contacts.Count - 1; at >= before; at--)
                    {
                        var (from, to) = contacts[at].From == first.Passage ? (first, second) : (second, first);
                        if (!NeverTurnsBack(state, [from.Passage, from.Opening, to.Opening, to.Passage])) contacts.RemoveAt(at);
                    }
                }
            }
        }

        return contacts;

        void Meet(Node opening, Node passage, Link link)
        {
            if (opening.Kind != NodeKind.Opening || passage.Circuit is null) return;
            var cluster = clusters[opening.Index];
            if (!meeting.TryGetValue(cluster, out var met)) meeting[cluster] = met = [];
            met.Add((passage.Index, link, opening.Index));
        }
    }

    /// <summary>
    /// Whether oil goes for certain from one node to its neighbour: from the higher pressure to the lower, and between two
    /// that are level from the one nearer to a source.
    /// </summary>
    private static bool Gives(GearSolution state, int from, int to)
    {
        var difference = state.PressureAt(from) - state.PressureAt(to);
        return difference > Level || (difference >= -Level && state.StepsFromSource(from) < state.StepsFromSource(to));
    }

    /// <summary>Whether no node of a way gives oil to one that comes before it.</summary>
    private static bool NeverTurnsBack(GearSolution state, ReadOnlySpan<int> way)
    {
        for (var later = 1; later < way.Length; later++)
        {
            for (var earlier = 0; earlier < later; earlier++)
            {
                if (way[earlier] != way[later] && Gives(state, way[later], way[earlier])) return false;
            }
        }

        return true;
    }

    private static Link Narrower(Link a, Link b) => a.SquareMillimetres < b.SquareMillimetres ? a : b;

    /// <summary>For each node, the first of the openings that open links join to it without a passage between.</summary>
    private static int[] OpeningClusters(GearSolution state)
    {
        var network = state.Network;
        var cluster = new int[network.Nodes.Length];
        for (var node = 0; node < cluster.Length; node++) cluster[node] = node;
        for (var changed = true; changed;)
        {
            changed = false;
            foreach (var link in network.Links)
            {
                if (cluster[link.A] == cluster[link.B] || !IsOpening(link.A) || !IsOpening(link.B) || !state.IsOpen(link)) continue;
                cluster[link.A] = cluster[link.B] = Math.Min(cluster[link.A], cluster[link.B]);
                changed = true;
            }
        }

        return cluster;

        bool IsOpening(int node) => network.Nodes[node].Kind == NodeKind.Opening;
    }

    private static void AddDirected(List<Contact> contacts, GearSolution state, int a, int b, Link link, bool eitherWay)
    {
        if (state.Network.Nodes[a].Circuit == state.Network.Nodes[b].Circuit) return;
        if (Math.Max(state.PressureAt(a), state.PressureAt(b)) <= Level) return;
        if (state.OilAt(a) == OilState.Trapped && state.OilAt(b) == OilState.Trapped) return;
        var (forth, back) = (Gives(state, a, b), Gives(state, b, a));
        if (forth || (eitherWay && !back)) contacts.Add(new Contact(a, b, link));
        if (back || (eitherWay && !forth)) contacts.Add(new Contact(b, a, link));
    }

    private readonly record struct Contact(int From, int To, Link Link);

    /// <summary>A matched set's pressures by passage; a passage that it lacks takes its circuit's highest.</summary>
    internal sealed class ReferencePressures
    {
        private readonly Dictionary<string, double> byName = [];
        private readonly Dictionary<string, double> byCircuit = [];

        public ReferencePressures(GearSolution state)
        {
            foreach (var node in state.Network.Nodes)
            {
                if (node.Kind != NodeKind.Passage) continue;
                var pressure = state.PressureAt(node.Index);
                byName[node.Name] = pressure;
                byCircuit[node.Circuit!] = Math.Max(pressure, byCircuit.GetValueOrDefault(node.Circuit!));
            }
        }

        public double Of(Node node) =>
            byName.TryGetValue(node.Name, out var own) ? own : byCircuit.GetValueOrDefault(node.Circuit!);
    }
}
