using System.Text.RegularExpressions;
using Circuits.Findings;

namespace Circuits.Studies;

/// <summary>What makes two findings of two assemblies the same: what they are about, whatever the pressures that came out.</summary>
/// <param name="Rule">The rule.</param>
/// <param name="Gear">The gear, or null.</param>
/// <param name="Message">The sentence without its pressures.</param>
/// <param name="Place">Where it points.</param>
internal readonly partial record struct FindingKey(string Rule, string? Gear, string Message, Place Place)
{
    public static FindingKey Of(Finding finding) => new(finding.Rule, finding.Gear, Pressure().Replace(finding.Message, "kPa"), finding.Place);

    [GeneratedRegex(@"(\d+(\.\d+)? of )?\d+(\.\d+)? kPa", RegexOptions.CultureInvariant)]
    private static partial Regex Pressure();
}
