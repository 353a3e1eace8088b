using Circuits.Findings;
using Circuits.Model;
using Circuits.Quantities;

namespace Circuits.Reading;

/// <summary>Turns one entry of a change set, a line of a file or an option, into a request.</summary>
internal static class ChangeEntry
{
    /// <summary>The kinds of change, by the words that files and options use.</summary>
    public static readonly string[] Kinds = ["fit", "hole", "plug", "drop", "ball", "stick", "leak", "solenoid", "clog"];

    /// <summary>Whether a change of that kind is a name alone.</summary>
    public static bool IsBare(string kind) => kind is "plug" or "drop";

    /// <summary>A change that is a name alone: plug, drop, or a matched set to fit.</summary>
    public static ChangeRequest Bare(string kind, string name, Place place) => kind switch
    {
        "plug" => new ChangeRequest.Plug(name, place),
        "drop" => new ChangeRequest.Drop(name, place),
        _ => new ChangeRequest.FitSet(name, place),
    };

    /// <summary>A change that is a name and a value, or null with a finding.</summary>
    /// <param name="kind">The kind.</param>
    /// <param name="target">What is changed.</param>
    /// <param name="value">How.</param>
    /// <param name="place">Where the change stands.</param>
    /// <param name="valuePlace">Where its value stands.</param>
    /// <param name="findings">Takes what is wrong.</param>
    public static ChangeRequest? Valued(string kind, string target, string value, Place place, Place valuePlace, FindingList findings)
    {
        var what = new What($"{kind} {target}");
        return kind switch
        {
            "fit" => new ChangeRequest.Fit(target, value, place),
            "stick" => new ChangeRequest.Stick(target, value, place),
            "solenoid" => new ChangeRequest.Solenoid(target, value, place),
            "clog" => Sizes.Read(value, valuePlace, ScreenRanges.Clogged, what, findings) is { } share ? new ChangeRequest.Clog(target, share, place) : null,
            "hole" => Sizes.Read(value, valuePlace, OpeningRanges.Hole, what, findings) is { } diameter
                ? new ChangeRequest.Hole(target, new Shape.Hole(new Length(diameter), value), place)
                : null,
            "ball" => Sizes.Read(value, valuePlace, BallRanges.Diameter, what, findings) is { } size
                ? new ChangeRequest.Ball(target, new Length(size), place)
                : null,
            _ => Leak(target, value, place, valuePlace, what, findings),
        };
    }

    /// <summary>How a change of that kind is written as an option.</summary>
    public static string Example(string kind) => kind switch
    {
        "fit" => "plate=2, or a matched set's name",
        "hole" => "plate@21=2.0mm",
        "ball" => "two-way=5.5mm",
        "stick" => "select=rest",
        "leak" => "body.line~exhaust=0.3mm2",
        "solenoid" => "two=stuck-low",
        "plug" => "plate@22",
        "clog" => "filter=80%",
        _ => "two-way",
    };

    private static ChangeRequest.Leak? Leak(string target, string value, Place place, Place valuePlace, What what, FindingList findings)
    {
        var ends = target.Split('~', StringSplitOptions.TrimEntries);
        if (ends is not [{ Length: > 0 } a, { Length: > 0 } b])
            findings.Add(ChangeSetRules.IncompleteChange.At(place, $"A leak joins two passages, found {Quote.Text(target)}", "Write body.line~exhaust."));
        else if (Sizes.Read(value, valuePlace, OpeningRanges.Area, what, findings) is { } area)
            return new ChangeRequest.Leak(a, b, new Area(area), place);
        return null;
    }
}
