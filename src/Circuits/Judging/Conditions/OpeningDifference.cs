using Circuits.Findings;
using Circuits.Networks;
using Circuits.Solving.Flow;

namespace Circuits.Judging.Conditions;

/// <summary>An opening that is another than in the matched set, with what that does to oil there.</summary>
/// <param name="Link">The opening: here, or in the matched set where there is none here.</param>
/// <param name="Here">What it is here, in words.</param>
/// <param name="There">What it is in the matched set.</param>
/// <param name="Weight">How much it differs: in flow as a share of what the pump gives, and in pressure at its ends as a share of line.</param>
internal sealed record OpeningDifference(Link Link, Phrase Here, Phrase There, double Weight)
{
    /// <summary>Areas nearer to one another than this fraction are one.</summary>
    private const double SameArea = 0.005;

    /// <summary>The difference in words.</summary>
    /// <param name="set">The matched set.</param>
    public RelatedPlace Told(string set) => new(
        Link.Place,
        Here.Equals(There) ? Phrase.Of($"differs most from {set}: {Link.Element}, which joins other places there") : Phrase.Of($"differs most from {set}: {Link.Element}, {Here} where {set} has {There}"));

    /// <summary>The opening that differs most; null when none does, or there is no answer to compare.</summary>
    /// <param name="here">A gear.</param>
    /// <param name="there">The same gear of the matched set at the same condition.</param>
    public static OpeningDifference? Most(SteadyGear here, SteadyGear there)
    {
        if (!here.Converged || !there.Converged) return null;
        var (ours, theirs) = (OpeningsOf(here), OpeningsOf(there));
        var ends = new Dictionary<string, double>();
        foreach (var node in there.Network.Nodes) ends.TryAdd(node.Name, there.PressureAt(node.Index));
        var line = Math.Max(1, there.PressureAt(there.Network.Pump));
        var pumped = Math.Max(double.Epsilon, there.Pumped);
        OpeningDifference? most = null;
        foreach (var name in ours.Keys.Union(theirs.Keys))
        {
            var (own, other) = (ours.GetValueOrDefault(name), theirs.GetValueOrDefault(name));
            if (own is not null && other is not null && own.IsLike(other)) continue;
            var weight = (Math.Abs((own?.Flow ?? 0) - (other?.Flow ?? 0)) / pumped) + ((own ?? other)!.EndNames.Concat(other?.EndNames ?? []).Distinct().Max(end => Apart(end)) / line);
            if (most is null || weight > most.Weight)
                most = new OpeningDifference((own ?? other)!.Links[0], own?.Words ?? WallIn(here, name), other?.Words ?? WallIn(there, name), weight);
        }

        return most;

        double Apart(string end)
        {
            var node = here.Network.Nodes.FirstOrDefault(node => node.Name == end);
            return node is null || !ends.TryGetValue(end, out var pressure) ? 0 : Math.Abs(here.PressureAt(node.Index) - pressure);
        }
    }

    /// <summary>All ways of an element that oil passes, and how much of it.</summary>
    private sealed class Opening(Network network)
    {
        public List<Link> Links { get; } = [];

        /// <summary>The most that passes any of them, m3/s.</summary>
        public double Flow { get; set; }

        public IEnumerable<string> EndNames => Links.SelectMany(link => new[] { network.Nodes[link.A].Name, network.Nodes[link.B].Name });

        public Phrase Words => Links.MinBy(link => link.SquareMillimetres)!.Detail;

        /// <summary>Whether the same ways are open to the same amount, by the same means.</summary>
        public bool IsLike(Opening other) => Links.Count == other.Links.Count
            && Ways().Order(StringComparer.Ordinal).SequenceEqual(other.Ways().Order(StringComparer.Ordinal))
            && Math.Abs(Narrowest - other.Narrowest) <= SameArea * Math.Max(Narrowest, other.Narrowest);

        private double Narrowest => Links.Min(link => double.IsInfinity(link.SquareMillimetres) ? double.MaxValue : link.SquareMillimetres);

        private IEnumerable<string> Ways() => Links.Select(link => $"{Routes.KeyOf(network, link)}|{link.Gate.Kind}");
    }

    private static Dictionary<string, Opening> OpeningsOf(SteadyGear gear)
    {
        var openings = new Dictionary<string, Opening>();
        var ofLinks = new Opening?[gear.Network.Links.Length];
        foreach (var link in gear.Network.Links)
        {
            if (link.Kind is LinkKind.Metal or LinkKind.Chamber) continue;
            if (!openings.TryGetValue(link.Element, out var opening)) openings.Add(link.Element, opening = new Opening(gear.Network));
            opening.Links.Add(link);
            ofLinks[link.Index] = opening;
        }

        foreach (var (element, rate) in gear.Elements)
        {
            if (element.Link >= 0 && ofLinks[element.Link] is { } opening) opening.Flow = Math.Max(opening.Flow, Math.Abs(rate));
        }

        return openings;
    }

    private static Phrase WallIn(SteadyGear gear, string element) =>
        gear.Network.Links.FirstOrDefault(link => link.Kind == LinkKind.Metal && link.Element == element)?.Detail ?? Phrase.Of($"none");
}
