using System.CommandLine;
using System.Globalization;
using Circuits.Model;
using Circuits.Rendering;
using Circuits.Rendering.Json;
using Circuits.Studies.AirCheck;

namespace Circuits.Cli;

/// <summary><c>air-check</c>: what air on the bench must move, and what it shows.</summary>
internal sealed class AirCheckVerb
{
    /// <summary>What a person does in one go.</summary>
    private const int Usual = 12;

    private readonly Option<string?> lever = new("--lever") { HelpName = "position", Description = "Where the manual valve stands; where the file's neutral puts it unless given." };

    private readonly Option<string?> most = new("--most") { HelpName = "number", Description = $"Most connections to plan; {Usual} unless given." };

    public static Verb Create(CommonOptions options)
    {
        var verb = new AirCheckVerb();
        Completes.FromUnit(verb.lever, options.Files, Positions);
        return new Verb(
            "air-check", "A sheet for checking with air at the bench: for each connection what must move, what must not, what a hiss would mean, and what air cannot show.",
            [options.Files, options.Fit, verb.lever, verb.most, options.Format, options.Output, options.Units],
            ["circuits air-check unit.yaml", "circuits air-check unit.yaml --fit late --most 6 -o sheet.txt"],
            session => PerUnit.Run(session, (unit, file) => verb.Ask(session, unit, file)));
    }

    private UnitAnswer Ask(Session session, Unit unit, string file)
    {
        var assembly = FittedParts.Of(unit, file, session.Fit);
        var position = session.Parsed.GetValue(lever);
        CheckLever(unit, file, position);
        var report = AirStudy.Run(assembly, position, Most(session), session.Interrupted);
        return new UnitAnswer(() => AirCheckText.Of(report, session.Text), () => Documents.Of(report), []);
    }

    private static void CheckLever(Unit unit, string file, string? position)
    {
        if (position is not null && !Positions(unit).Contains(position)) throw UserError.Unknown("lever position", position, [.. Positions(unit)], $" in {file}");
    }

    private static IEnumerable<string> Positions(Unit unit) =>
        unit.Parts.SelectMany(part => part.Revisions).SelectMany(revision => revision.Lever).Select(position => position.Name).Distinct();

    private int Most(Session session)
    {
        if (session.Parsed.GetValue(most) is not { } text) return Usual;
        return int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var count) && count is > 0 and <= 10_000
            ? count
            : throw new UserError(UserError.Usage, $"--most must be a whole number from 1 to 10000, found '{text}'");
    }
}
