namespace Circuits.Tests.Properties;

/// <summary>A joint's layers for the brute-force network: what touches what, location by location.</summary>
internal sealed class BruteJoint
{
    private readonly JointSpec joint;
    private readonly Dictionary<string, int> upper;
    private readonly Dictionary<string, int> lower;
    private readonly List<Hole>[] sheets;
    private readonly Func<bool, int> newNode;
    private readonly Dictionary<int, string> spots = [];

    public BruteJoint(
        JointSpec joint, List<(PartSpec Part, RevisionSpec Revision)> parts, Dictionary<Ref, int> nodes, Func<bool, int> newNode)
    {
        this.joint = joint;
        this.newNode = newNode;
        upper = Passages(joint.Upper);
        lower = Passages(joint.Lower);
        sheets = [.. joint.Sheets.Select(name => Revision(name).Openings
            .Select(opening => new Hole(newNode(false), [.. opening.At], opening.Size, opening.Size.Area)).ToList())];
        var used = upper.Keys.Concat(lower.Keys).Concat(sheets.SelectMany(sheet => sheet).SelectMany(hole => hole.At)).Distinct().ToList();
        for (var i = 0; i < sheets.Length; i++)
        {
            var sheet = Revision(joint.Sheets[i]);
            if (!sheet.IsGasket) continue;
            var open = used.Where(location => !sheet.OpenExcept.Contains(location) && !sheets[i].Exists(hole => hole.At.Contains(location)));
            sheets[i].AddRange(open.ToList().Select(location => new Hole(newNode(false), [location], null, double.PositiveInfinity)));
        }

        RevisionSpec Revision(string name) => parts.First(pair => pair.Part.Name == name).Revision;

        Dictionary<string, int> Passages(string casting) => Revision(casting).Passages
            .SelectMany(passage => passage.At.Where(at => at.Joint == joint.Name).Select(at => (at.Location, Node: nodes[new Ref(casting, passage.Name)])))
            .ToDictionary(pair => pair.Location, pair => pair.Node);
    }

    /// <summary>
    /// What touches what. A gasket's window is not there: what it parts lies face to face. Openings that lie on openings share
    /// one spot, to which each has half of its resistance.
    /// </summary>
    public List<BruteBuilder.Contact> Contacts()
    {
        var found = new Dictionary<(int, int), BruteBuilder.Contact>();
        var shared = new HashSet<string>();
        foreach (var location in upper.Keys.Concat(lower.Keys).Concat(sheets.SelectMany(sheet => sheet).SelectMany(hole => hole.At)).Distinct())
        {
            var layers = Stack(location).Where(layer => layer is not [{ IsWindow: true }]).ToList();
            foreach (var (above, below) in layers.Zip(layers.Skip(1)))
            {
                if (above.Count == 0 || below.Count == 0) continue;
                if (above[0].Half == 0 || below[0].Half == 0)
                {
                    foreach (var (a, b) in above.SelectMany(a => below.Select(b => (a, b))))
                        found.TryAdd((a.Node, b.Node), new BruteBuilder.Contact(a.Node, b.Node, 1 / Math.Sqrt(a.Half + b.Half)));
                }
                else if (shared.Add(string.Join(' ', above.Concat(below).Select(end => end.Node))))
                {
                    var spot = newNode(false);
                    spots[spot] = location;
                    foreach (var a in above) found[(a.Node, spot)] = new BruteBuilder.Contact(a.Node, spot, 1 / Math.Sqrt(a.Half));
                    foreach (var b in below) found[(spot, b.Node)] = new BruteBuilder.Contact(spot, b.Node, 1 / Math.Sqrt(b.Half));
                }
            }
        }

        return [.. found.Values];
    }

    /// <summary>The opening that a ball closes at a location, or -1: the first from its side that it does not pass.</summary>
    public int SeatOf(BallSpec ball, string location)
    {
        foreach (var sheet in ball.Pocket.Part == joint.Upper ? sheets : sheets.Reverse())
        {
            var here = sheet.Where(hole => hole.At.Contains(location)).MaxBy(hole => hole.Area);
            if (here is null) return -1;
            var passes = here.Size is not { } size || (size.Cut == 0 && ball.Diameter is { } diameter && size.Width >= diameter);
            if (!passes) return here.Size!.Value.IsHole ? here.Node : -1;
        }

        return -1;
    }

    /// <summary>The contacts by which the pocket's oil comes to an opening at a location.</summary>
    public IEnumerable<int> PocketSide(List<BruteBuilder.Contact> contacts, int opening, string casting, string location)
    {
        var fromAbove = casting == joint.Upper;
        for (var i = 0; i < contacts.Count; i++)
        {
            var (end, other) = fromAbove ? (contacts[i].A, contacts[i].B) : (contacts[i].B, contacts[i].A);
            if (other == opening && spots.GetValueOrDefault(end, location) == location) yield return i;
        }
    }

    /// <summary>What lies at a location, from the upper casting to the lower; an empty layer is metal.</summary>
    private IEnumerable<List<End>> Stack(string location)
    {
        yield return upper.TryGetValue(location, out var above) ? [new End(above, 0, false)] : [];
        foreach (var sheet in sheets)
            yield return [.. sheet.Where(hole => hole.At.Contains(location)).Select(hole => new End(hole.Node, 0.5 / (hole.Area * hole.Area), hole.Size is null))];
        yield return lower.TryGetValue(location, out var below) ? [new End(below, 0, false)] : [];
    }

    /// <summary>A thing in the stack, with half of its resistance 1/A^2; a passage has none.</summary>
    private readonly record struct End(int Node, double Half, bool IsWindow);

    private sealed record Hole(int Node, List<string> At, SizeSpec? Size, double Area);
}
