using System.Collections.Immutable;
using System.CommandLine;
using Circuits.Model;
using Circuits.Quantities;
using Circuits.Rendering;
using Circuits.Rendering.Json;
using Circuits.Studies.Identify;

namespace Circuits.Cli;

/// <summary><c>identify</c>: which revision is this part, and what to look at next.</summary>
internal sealed class IdentifyVerb
{
    private readonly Argument<string[]> parts = new("PART")
    {
        Arity = ArgumentArity.ZeroOrMore,
        Description = "Only these parts; every part unless given.",
    };

    private readonly Option<string[]> part = new("--part")
    {
        HelpName = "PART",
        Description = "The same as PART. May be repeated; several go with commas.",
    };

    private readonly Option<string[]> seen = new("--seen")
    {
        HelpName = "phrase",
        Description = "What was seen, in the words of the sheet: \"slot at 22-23\", or with its part: \"plate: slot at 22-23\". May be repeated.",
    };

    private readonly Option<string[]> notSeen = new("--not-seen")
    {
        HelpName = "phrase",
        Description = "What was looked for and is not there. May be repeated.",
    };

    private readonly Option<string[]> measured = new("--measured")
    {
        HelpName = "what=size",
        Description = "What was measured: 21=5.0mm, plate@21=#45, 22-23=\"3 x 15 mm\", \"ball in range=10 mm\". May be repeated.",
    };

    private readonly Option<string?> tolerance = new("--tolerance")
    {
        HelpName = "size",
        Description = "How far a measured size may be off; 0.05 mm unless given.",
    };

    private IdentifyVerb()
    {
    }

    public static Verb Create(CommonOptions options)
    {
        var it = new IdentifyVerb();
        Completes.FromUnit(it.part, options.File, unit => unit.Parts.Where(each => each.Revisions.Length > 1).Select(each => each.Name));
        return new Verb(
            "identify", "Which revision is the part on the bench: what to look at, in the order that splits best, and what remains possible "
                + "after what was seen and measured.",
            [options.File, it.parts, it.part, it.seen, it.notSeen, it.measured, it.tolerance, options.Format, options.Output, options.Units],
            [
                "circuits identify unit.yaml", "circuits identify unit.yaml plate --seen \"slot at 22-23\" --not-seen \"hole at 7\"",
                "circuits identify unit.yaml --measured plate@21=5.0mm --seen \"rib between 5 and 6\"",
            ],
            session => PerUnit.Run(session, (unit, file) => it.Ask(session, unit, file)));
    }

    private UnitAnswer Ask(Session session, Unit unit, string file)
    {
        var width = Tolerance(session);
        var traits = Chosen(session, unit, file).Select(chosen => PartTraits.Of(unit, chosen)).ToImmutableArray();
        var observations = Observations(session, unit, traits);
        if (Identifier.Contradiction(observations, width) is var (first, second))
        {
            throw new UserError(
                UserError.Usage, $"{Told(first)} and {Told(second)} cannot both be true of one {first.Part}",
                "Look again, and leave out the one that is wrong.");
        }

        var report = Identifier.Run(unit, traits, observations, width);
        return new UnitAnswer(() => IdentifyText.Of(report, session.Text), () => Documents.Of(report), []);
    }

    private ImmutableArray<Part> Chosen(Session session, Unit unit, string file)
    {
        List<string> names = [.. session.Parsed.GetValue(parts) ?? [], .. OptionWords.Items(session.Parsed.GetValue(part))];
        foreach (var name in names)
        {
            if (unit.FindPart(name) is null) throw UserError.Unknown("part", name, [.. unit.Parts.Select(known => known.Name)], $" in {file}");
        }

        return names.Count == 0 ? unit.Parts : [.. unit.Parts.Where(known => names.Contains(known.Name))];
    }

    private ImmutableArray<Observation> Observations(Session session, Unit unit, ImmutableArray<PartTraits> traits)
    {
        var reader = new ObservationReader(traits);
        return
        [
            .. Values(seen).Select(text => Understood(text, reader.Look(text, seen: true))),
            .. Values(notSeen).Select(text => Understood(text, reader.Look(text, seen: false))),
            .. Values(measured).Select(text => Understood(text, reader.Measured(text))),
        ];

        string[] Values(Option<string[]> option) => session.Parsed.GetValue(option) ?? [];

        Observation Understood(string text, ObservationReading reading)
        {
            if (reading.Observation is { } observation) return observation;
            var elsewhere = unit.Parts.FirstOrDefault(other => traits.All(chosen => chosen.Part != other)
                && (text.StartsWith(other.Name + ":", StringComparison.Ordinal) || text.StartsWith(other.Name + "@", StringComparison.Ordinal)));
            throw elsewhere is null
                ? new UserError(UserError.Usage, reading.Problem!, reading.Help)
                : new UserError(UserError.Usage, $"'{text}' is about {elsewhere.Name}, which is not among the parts asked for", $"Add {elsewhere.Name}, or name no part.");
        }
    }

    private double Tolerance(Session session)
    {
        if (session.Parsed.GetValue(tolerance) is not { } text) return Identification.DefaultTolerance;
        var read = QuantityText.Parse(text);
        return read is { Problem: QuantityProblem.None, Unit.Dimension: Dimension.Length, Value: >= 0 and <= Identification.GreatestTolerance }
            ? read.Value
            : throw new UserError(
                UserError.Usage, $"--tolerance {text} is not a length from 0 to {Identification.GreatestTolerance:0} mm", "Write 0.05 mm, or 0.002 in.");
    }

    private static string Told(Observation observation) => observation.Kind switch
    {
        ObservationKind.Seen => $"--seen \"{observation.Text}\"",
        ObservationKind.NotSeen => $"--not-seen \"{observation.Text}\"",
        _ => $"--measured \"{observation.Text}\"",
    };
}
