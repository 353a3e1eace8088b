using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Quantities;
using Circuits.Rendering;

namespace Circuits.Tests.Rendering;

/// <summary>Findings made by hand, and the schemas that their forms must keep to.</summary>
internal static class FormSamples
{
    public static FormContext Context { get; } = new("check", "1.2.3", "/shop/units");

    public static string SchemaFile(string name) => Path.Combine(Repository.Root, "tests", "Circuits.Tests", "Outside", "Schemas", name);

    /// <summary>A finding in an assembly and a gear, with help and a second place.</summary>
    public static Finding Lost(int line = 41, double left = 54, double of = 772, string at = "plate@22") =>
        new("lost-supply", Severity.Error, Phrase.Of($"{"direct"} is not applied{GearMention.In("R")}: its oil stops at {at} ({new Pressure(left):bare} of {new Pressure(of)} left)"), new Place("sample.yaml", line, 9))
        {
            Gear = "R",
            Assembly = [new("body", "2"), new("plate", "1"), new("cover", "1")],
            Help = "Fit plate 2.",
            Related = [new RelatedPlace(new Place("parts/plate.yaml", 7, 3), $"the clutch")],
        };

    public static Finding Note() => new("assumed-size", Severity.Note, Phrase.Of($"assumed {new Area(40)} for {"valve body.select"}: no area given"), new Place("sample.yaml", 12, 0));

    public static FindingReport Report(params ImmutableArray<Finding> findings) => new("sample.yaml", Samples.Unit, findings);

    public static FindingReport Unread() => new("bad.yaml", null, [new("not-yaml", Severity.Error, Phrase.Of($"a bracket is not closed"), new Place("bad.yaml", 3, 1))]);
}
