using Circuits.Model;
using Circuits.Reading.Yaml;

namespace Circuits.Reading;

/// <summary>Checks that a ball's seat lies where its pocket opens, in some revision. Whether it does in an assembly is judged there.</summary>
internal static class SeatCheck
{
    /// <summary>Reports a seat outside its pocket, or one whose joint is not clear.</summary>
    /// <param name="joint">The joint, or null when the seat is a number alone.</param>
    /// <param name="id">The location.</param>
    /// <param name="pocket">The pocket.</param>
    /// <param name="element">What messages call the ball.</param>
    /// <param name="names">Every name there is.</param>
    /// <param name="findings">Takes what is wrong.</param>
    public static void Check(string? joint, YamlScalar id, PassageName pocket, string element, NameIndex names, FindingList findings)
    {
        if (!names.Joints.Complete || names.FindPart(pocket.Part) is not { Broken: false } owner) return;
        var revisions = owner.Locations(pocket.Passage, names.Joints);
        foreach (var locations in revisions)
        {
            if (joint is not null || locations[id.Text] is not [var first, _, ..] several) continue;
            findings.Add(NameRules.AmbiguousName.At(
                id.Place, $"{element}: its pocket {pocket} opens at {id.Text} on joints {string.Join(" and ", several)}", $"Write {{joint: {first}, at: {id.Text}}}."));
            return;
        }

        if (revisions.Exists(locations => joint is null ? locations.Has(id.Text) : locations[id.Text].Contains(joint))) return;
        var where = joint is null ? id.Text : $"{id.Text} of joint {joint}";
        var known = revisions.SelectMany(locations => locations.Names.Where(location => joint is null || locations[location].Contains(joint)))
            .Distinct()
            .Take(20)
            .ToList();
        findings.Add(PartRules.SeatOutsidePocket.At(
            id.Place, $"{element}: seat {where} is not a location of its pocket {pocket}",
            known.Count == 0 ? $"{pocket} opens on no {(joint is null ? "joint" : $"location of joint {joint}")}." : $"{pocket} opens at {Quote.Any(known)}."));
    }
}
