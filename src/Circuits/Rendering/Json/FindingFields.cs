using System.ComponentModel;
using System.Text.Json.Serialization;
using Circuits.Findings;

namespace Circuits.Rendering.Json;

internal abstract class AnyFindingFields(Finding finding) : Placed(finding.Place)
{
    [Description("The stable rule name; `circuits explain RULE` tells what it means.")] public string Rule => finding.Rule;
    [Description("Only error makes the exit code 1.")] public Severity Severity => finding.Severity;
    [Description("One sentence.")] public Phrase Message => finding.Message;
    [Description("The gear, or null when it belongs to no single gear.")] public string? Gear => finding.Gear;
    [JsonPropertyOrder(1), Description("What to do, or null.")] public string? Help => finding.Help;

    [JsonPropertyOrder(3), Description("Other places that explain it.")]
    public IEnumerable<RelatedFields> Related => finding.Related.Select(related => new RelatedFields(related));
}

/// <summary>A finding whose assembly is plain from the document.</summary>
internal sealed class FindingFields : AnyFindingFields
{
    private readonly Finding finding;

    internal FindingFields(Finding finding) : base(finding) => this.finding = finding;

    public static IEnumerable<FindingFields> Of(IEnumerable<Finding> findings) => findings.Select(finding => new FindingFields(finding));
}

/// <summary>A finding with the assembly that it was found in.</summary>
internal sealed class AssemblyFindingFields : AnyFindingFields
{
    private readonly Finding found;

    internal AssemblyFindingFields(Finding found) : base(found) => this.found = found;

    [JsonPropertyOrder(2), Description("The assembly it was found in; null when it belongs to the file.")]
    public IReadOnlyDictionary<string, string>? Assembly => found.Assembly.IsEmpty ? null : Fields.Of(found.Assembly);
}

internal sealed class RelatedFields : Placed
{
    private readonly RelatedPlace related;

    internal RelatedFields(RelatedPlace related) : base(related.Place) => this.related = related;

    public Phrase Message => related.Message;
}
