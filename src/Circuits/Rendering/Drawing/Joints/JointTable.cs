using Circuits.Model;
using Circuits.Studies.Drawing;

namespace Circuits.Rendering.Drawing.Joints;

/// <summary>What stands at each location of a joint, in words: the castings' passages, the sheets' openings, balls.</summary>
internal static class JointTable
{
    /// <summary>Rows, each in the style of what it tells of.</summary>
    public static IEnumerable<(string Text, string? Style)> Rows(JointLook look, UnitSystem units)
    {
        foreach (var location in look.Locations)
        {
            var facts = Facts(look, location.Id, units).ToList();
            if (facts.Count == 0) facts.Add(("solid on both sides", LookChange.Kept));
            var changes = facts.Select(fact => fact.Change).Where(change => change != LookChange.Kept).Distinct().ToList();
            yield return ($"{DrawnText.Short(location.Id, 8)}{(location.IsMeasured ? "" : " (no coordinates)")}:  {string.Join(",  ", facts.Select(fact => fact.Change switch
            {
                LookChange.Removed => $"removed {fact.Text}",
                LookChange.Added => $"added {fact.Text}",
                _ => fact.Text,
            }))}", changes.Count == 0 ? null : changes is [var only] ? JointStyle.WordOf(only) : "name");
        }
    }

    /// <summary>A size in words.</summary>
    public static string SizeOf(Shape shape, UnitSystem units) => shape switch
    {
        Shape.Hole hole => $"hole {Measures.Of(hole.Diameter.Quantity, units)}",
        Shape.Slot slot => $"slot {Measures.Number(slot.Width.Quantity, units)} x {Measures.Of(slot.Length.Quantity, units)}",
        { Area: { } area } => $"{Measures.Of(area.Quantity, units)}, outline not given",
        _ => "opening, size not given",
    };

    private static IEnumerable<(string Text, LookChange Change)> Facts(JointLook look, string id, UnitSystem units)
    {
        foreach (var track in look.Tracks.Where(track => track.Locations.Contains(id)).OrderBy(track => track.IsUpper ? 0 : 1))
        {
            // A passage that opens here in both, and elsewhere too in one of them, is no change of this location.
            var both = look.Tracks.Any(other => other.Name == track.Name && other.Change != track.Change && other.Locations.Contains(id));
            if (!both || track.Change != LookChange.Added) yield return (DrawnText.Short(track.Name.ToString(), 34), both ? LookChange.Kept : track.Change);
        }

        foreach (var opening in look.Openings.Where(opening => opening.Locations.Contains(id)))
            yield return ($"{DrawnText.Short(opening.Sheet, 18)} {SizeOf(opening.Shape, units)}{(opening.Locations.Length > 1 ? " to " + DrawnText.Short(string.Join(", ", opening.Locations.Where(other => other != id)), 20) : "")}", opening.Change);
        foreach (var blank in look.Blanks.Where(blank => blank.Location == id)) yield return ($"{DrawnText.Short(blank.Sheet, 18)} blank", blank.Change);
        foreach (var ball in look.Balls.Where(ball => ball.Location == id))
            yield return ($"seat of ball {DrawnText.Short(ball.Name, 24)}{(ball.Millimetres is { } size ? $" {Measures.Length(size, units)}" : "")}", ball.Change);
    }
}
