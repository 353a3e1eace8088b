using System.Collections.Immutable;
using System.Globalization;
using Circuits.Model;

namespace Circuits.Studies.Identify;

/// <summary>Finds what differs between revisions and yet shows nowhere: springs, lands, ports. What that is of each kind stands in its file.</summary>
internal sealed partial class Unseen(string part) : IElementKinds<Revision>
{
    private readonly List<(string Name, string Text)> elements = [];

    /// <summary>The elements that are not the same in all of these revisions, <c>regulator main</c>, in the order of the file.</summary>
    public static ImmutableArray<string> Between(Part part, ImmutableArray<Revision> revisions)
    {
        var byElement = new Dictionary<string, List<string>>();
        foreach (var revision in revisions)
        {
            foreach (var same in Elements(part.Name, revision).GroupBy(element => element.Name))
            {
                if (!byElement.TryGetValue(same.Key, out var texts)) byElement[same.Key] = texts = [];
                texts.Add(string.Join(';', same.Select(element => element.Text)));
            }
        }

        return [.. byElement.Where(element => element.Value.Count != revisions.Length || element.Value.Distinct().Count() > 1).Select(element => element.Key)];
    }

    private static List<(string Name, string Text)> Elements(string part, Revision revision)
    {
        var unseen = new Unseen(part);
        unseen.Each(revision);
        return unseen.elements;
    }

    private void Add(string name, string text) => elements.Add((name, text));

    private static string Of(ImmutableArray<Port> ports) =>
        Join(ports.Select(port => $"{string.Join('+', port.Passages.Select(passage => passage.Name))} {Of(port.Area?.SquareMillimetres)}"));

    private static string Of(Shape shape) => shape switch
    {
        Shape.Hole { Depth: { } depth } => $"{Of(shape.Area?.SquareMillimetres)} {Of(depth.Millimetres)}",
        Shape.RoundGap gap => $"{Of(gap.Diameter.Millimetres)} {Of(gap.Height.Millimetres)} {Of(gap.Length.Millimetres)} {Of(gap.Eccentricity)}",
        Shape.FlatGap gap => $"{Of(gap.Across.Millimetres)} {Of(gap.Height.Millimetres)} {Of(gap.Length.Millimetres)}",
        _ => Of(shape.Area?.SquareMillimetres),
    };

    private static string Of(double? value) => value?.ToString("R", CultureInfo.InvariantCulture) ?? "";

    private static string Join(IEnumerable<string> texts) => string.Join('|', texts);
}
