using Circuits.Model;
using Circuits.Reading.Yaml;

namespace Circuits.Reading;

internal sealed partial class RevisionReader
{
    public void Leaks(YamlMapping content) => revision = revision with
    {
        Leaks = part.Listed(content, "leaks", item => RestrictionReader.Label("leak", item, part), (item, fields) =>
            RestrictionReader.Read(fields, part) is var (a, b, shape) ? new Leak(a, b, shape, item.Place) : null),
    };
}

internal sealed partial class Sections
{
    public void Leaks(List<Section> all) => all.Add(new("leaks", "restriction") { MarksOf = RestrictionReader.PairOf, NotInherited = "no leak" });
}
