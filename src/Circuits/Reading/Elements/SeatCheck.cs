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
        var found = false;
        var all = new List<string>();
        foreach (var revision in owner.Revisions)
        {
            if (revision.Content.Find("passages") is not YamlMapping passages || passages.Find(pocket.Passage) is not YamlMapping passage) continue;
            var joints = new List<string>();
            foreach (var (key, value) in passage.Entries)
            {
                if (!names.Joints.All.Contains(key.Text) || (joint is not null && key.Text != joint)) continue;
                foreach (var location in Nodes.ListOrOne(value).OfType<YamlScalar>())
                {
                    all.Add(location.Text);
                    if (location.Text == id.Text && !joints.Contains(key.Text)) joints.Add(key.Text);
                }
            }

            found |= joints.Count > 0;
            if (joints.Count < 2) continue;
            findings.Add(NameRules.AmbiguousName.At(
                id.Place, $"{element}: its pocket {pocket} opens at {id.Text} on joints {string.Join(" and ", joints)}", $"Write {{joint: {joints[0]}, at: {id.Text}}}."));
            return;
        }

        if (found) return;
        var where = joint is null ? id.Text : $"{id.Text} of joint {joint}";
        var known = all.Distinct().ToList();
        findings.Add(PartRules.SeatOutsidePocket.At(
            id.Place, $"{element}: seat {where} is not a location of its pocket {pocket}", known.Count == 0 ? $"{pocket} opens on no joint." : $"{pocket} opens at {Quote.Any(known)}."));
    }
}
