using Circuits.Findings;

namespace Circuits.Studies;

/// <summary>What makes two findings of two assemblies the same: what they are about, whatever was computed.</summary>
/// <param name="Rule">The rule.</param>
/// <param name="Gear">The gear, or null.</param>
/// <param name="Message">The message; what was computed is set aside.</param>
/// <param name="Place">Where it points.</param>
internal readonly record struct FindingKey(string Rule, string? Gear, Phrase Message, Place Place)
{
    public static FindingKey Of(Finding finding) => new(finding.Rule, finding.Gear, finding.Message, finding.Place);

    public bool Equals(FindingKey other) =>
        Rule == other.Rule && Gear == other.Gear && Place == other.Place && Message.Equals(other.Message, PhraseAside.Computed);

    public override int GetHashCode() => HashCode.Combine(Rule, Gear, Message, Place);
}
