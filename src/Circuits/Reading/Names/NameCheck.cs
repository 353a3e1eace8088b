using Circuits.Reading.Yaml;

namespace Circuits.Reading;

/// <summary>Which names may be given.</summary>
internal static class NameCheck
{
    // Reports and commands put these between names: part.passage, part=revision, plate@22, a~b, lists with commas.
    private const string InElements = ".@=,~ ";
    private const string InOthers = "@=,~ ";
    private const int Longest = 64;
    private const string InLocations = ".@=,~ -:";

    private static readonly string[] PartWords = ["exhaust", "pump", "case", "input", "output"];
    private static readonly string[] JointWords = ["circuit", "length", "section", "volume"];

    /// <summary>A part's name.</summary>
    public static bool Part(YamlScalar name, FindingList findings) => Check(name, "part", InElements, PartWords, findings);

    /// <summary>A joint's name; a passage has keys of its own beside joints.</summary>
    public static bool Joint(YamlScalar name, FindingList findings) => Check(name, "joint", InElements, JointWords, findings);

    /// <summary>A passage's name.</summary>
    public static bool Passage(YamlScalar name, FindingList findings) => Check(name, "passage", InElements, ["exhaust"], findings);

    /// <summary>The name of an element, a clutch, a solenoid.</summary>
    public static bool Element(YamlScalar name, string kind, FindingList findings) => Check(name, kind, InElements, [], findings);

    /// <summary>The name of a planetary or a loose shaft.</summary>
    public static bool Shaft(YamlScalar name, string kind, FindingList findings) =>
        Check(name, kind, InElements, ["case", "input", "output"], findings);

    /// <summary>The name of a revision, a matched set, a gear, a lever position, a tap.</summary>
    public static bool Other(YamlScalar name, string kind, FindingList findings) => Check(name, kind, InOthers, [], findings);

    /// <summary>A location's number.</summary>
    public static bool Location(YamlScalar name, FindingList findings) => Check(name, "location", InLocations, [], findings);

    private static bool Check(YamlScalar name, string kind, string forbidden, ReadOnlySpan<string> words, FindingList findings)
    {
        if (name.Text.Length == 0 || name.IsNull)
        {
            findings.Add(NameRules.BadName.At(name.Place, $"This {kind} has no name", "Give it a name."));
            return false;
        }

        if (name.Text.Length > Longest)
        {
            findings.Add(NameRules.BadName.At(name.Place, $"The {kind} name {Quote.Text(name.Text)} is longer than {Longest} characters", "Choose a shorter name."));
            return false;
        }

        if (words.Contains(name.Text))
        {
            findings.Add(NameRules.BadName.At(
                name.Place, $"A {kind} may not be called {name.Text}", $"Choose another name; {name.Text} has a meaning of its own."));
            return false;
        }

        var at = name.Text.AsSpan().IndexOfAny(forbidden);
        if (at < 0 && !name.Text.Any(char.IsWhiteSpace)) return true;
        var found = at < 0 || name.Text[at] == ' ' ? "a space" : $"'{name.Text[at]}'";
        findings.Add(NameRules.BadName.At(
            name.Place, $"The {kind} name {Quote.Text(name.Text)} holds {found}", "Names may hold letters, digits, - and _."));
        return false;
    }
}
