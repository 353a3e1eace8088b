namespace Circuits.Tests.Properties;

/// <summary>A joint's layers for the brute-force network: what touches what, location by location.</summary>
internal sealed class BruteJoint
{
    private readonly JointSpec joint;
    private readonly Dictionary<string, int> upper;
    private readonly Dictionary<string, int> lower;
    private readonly List<Hole>[] sheets;

    public BruteJoint(
        JointSpec joint, List<(PartSpec Part, RevisionSpec Revision)> parts, Dictionary<Ref, int> nodes, Func<bool, int> newNode)
    {
        this.joint = joint;
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

    public IEnumerable<BruteBuilder.Contact> Contacts()
    {
        var found = new Dictionary<(int, int), BruteBuilder.Contact>();
        for (var layer = 0; layer <= sheets.Length; layer++)
        {
            foreach (var (location, a, half) in Ends(layer))
            {
                foreach (var (there, b, otherHalf) in Ends(layer + 1))
                {
                    if (location == there) found.TryAdd((a, b), new BruteBuilder.Contact(a, b, 1 / Math.Sqrt(half + otherHalf)));
                }
            }
        }

        return found.Values;
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
        var layer = Array.FindIndex(sheets, sheet => sheet.Exists(hole => hole.Node == opening)) + 1;
        var near = Ends(fromAbove ? layer - 1 : layer + 1).Where(end => end.Location == location).Select(end => end.Node).ToHashSet();
        for (var i = 0; i < contacts.Count; i++)
        {
            var (end, other) = fromAbove ? (contacts[i].A, contacts[i].B) : (contacts[i].B, contacts[i].A);
            if (other == opening && near.Contains(end)) yield return i;
        }
    }

    /// <summary>What lies at each location of a layer, with half of its resistance 1/A^2.</summary>
    private IEnumerable<(string Location, int Node, double Half)> Ends(int layer)
    {
        if (layer == 0) return upper.Select(pair => (pair.Key, pair.Value, 0.0));
        if (layer > sheets.Length) return lower.Select(pair => (pair.Key, pair.Value, 0.0));
        return sheets[layer - 1].SelectMany(hole => hole.At.Select(location => (location, hole.Node, 0.5 / (hole.Area * hole.Area))));
    }

    private sealed record Hole(int Node, List<string> At, SizeSpec? Size, double Area);
}
