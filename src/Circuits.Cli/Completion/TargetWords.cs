using Circuits.Model;

namespace Circuits.Cli;

/// <summary>What a change of each kind can name in a unit, as the command line writes it; of one that takes a value, up to the sign before it.</summary>
internal static class TargetWords
{
    private static readonly string[] ValveWords = ["rest", "moved", "midway", "midway-shut"];
    private static readonly string[] SpillingWords = ["open", "shut"];
    private static readonly string[] SolenoidWords = ["stuck-low", "stuck-high", "reversed", "dead"];

    /// <summary>The words, each once.</summary>
    /// <param name="unit">The unit.</param>
    /// <param name="kind">The kind of change: the option's name without its dashes.</param>
    public static IEnumerable<string> Of(Unit unit, string kind) => Words(unit, kind).Distinct();

    private static IEnumerable<string> Words(Unit unit, string kind) => kind switch
    {
        "fit" =>
        [
            .. unit.Matched.Select(set => set.Name),
            .. unit.Parts.Where(part => part.Revisions.Length > 1).SelectMany(part => part.Revisions.Select(revision => $"{part.Name}={revision.Name}")),
        ],
        "hole" => Each(unit, revision => revision.Openings.Where(opening => opening.At.Length == 1).Select(opening => opening.At[0].Name), '@').Select(word => word + "="),
        "plug" => Each(unit, revision => revision.Openings.Select(opening => string.Join('-', opening.At.Select(at => at.Name))), '@'),
        "drop" => Each(unit, revision => revision.Balls.Select(ball => ball.Name)),
        "ball" => Each(unit, revision => revision.Balls.Select(ball => ball.Name)).Select(word => word + "="),
        "stick" => Each(unit, revision => revision.Valves.SelectMany(valve => ValveWords.Select(word => $"{valve.Name}={word}"))
            .Concat(revision.Regulators.SelectMany(regulator => (regulator is Regulator.Spilling ? SpillingWords : [.. SpillingWords, "drained"]).Select(word => $"{regulator.Name}={word}")))
            .Concat(revision.Screens.Where(screen => screen.Bypass is not null).SelectMany(screen => SpillingWords.Select(word => $"{screen.Name}={word}")))),
        "clog" => Each(unit, revision => revision.Screens.Select(screen => $"{screen.Name}=")),
        "leak" => Each(unit, revision => revision.Passages.Select(passage => $"{passage.Name}~")),
        "solenoid" => Each(unit, revision => revision.Solenoids.SelectMany(solenoid => SolenoidWords.Select(word => $"{solenoid.Name}={word}"))),
        _ => [],
    };

    private static IEnumerable<string> Each(Unit unit, Func<Revision, IEnumerable<string>> names, char sign = '.') =>
        unit.Parts.SelectMany(part => part.Revisions.SelectMany(names).Select(name => $"{part.Name}{sign}{name}"));
}
