using Circuits.Findings;
using Circuits.Judging.Rules;

namespace Circuits.Studies.Hazards;

/// <summary>Turns what must not be driven into findings.</summary>
internal static class HazardFindings
{
    /// <summary>
    /// A finding for the assembly as it is fitted, and for each row, by its worst effect. What is fitted, or was asked for, is an error; what may
    /// come to fail is a warning.
    /// </summary>
    public static IEnumerable<Finding> Of(HazardReport report)
    {
        var choice = report.Assembly.Choice;
        if (report.AsFitted is [{ } worst, ..] && RuleOf(worst.Severity) is { } fitted)
        {
            var place = report.Assembly.Unit.Gears.FirstOrDefault(gear => gear.Name == worst.Gear)?.Place ?? report.Assembly.Unit.Place;
            yield return fitted.At(place, $"as fitted: {worst.Feel}; must not be driven") with { Severity = Severity.Error, Gear = worst.Gear, Assembly = choice };
        }

        foreach (var row in report.Rows)
        {
            if (RuleOf(row.Severity) is not { } rule) continue;
            yield return rule.At(row.Place, $"{row.Mode}: {row.Effects[0].Feel}; must not be driven") with
            {
                Severity = report.Asked ? Severity.Error : Severity.Warning,
                Gear = row.Effects[0].Gear,
                Assembly = choice,
            };
        }
    }

    private static Rule? RuleOf(HazardSeverity severity) => severity switch
    {
        HazardSeverity.Destroys => HazardDestroys.Rule,
        HazardSeverity.Locks => HazardLocks.Rule,
        HazardSeverity.WrongDirection => HazardWrongDirection.Rule,
        HazardSeverity.LosesDrive => HazardLosesDrive.Rule,
        HazardSeverity.Creeps => HazardCreeps.Rule,
        _ => null,
    };
}
