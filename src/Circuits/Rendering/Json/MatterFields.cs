using System.ComponentModel;
using Circuits.Findings;
using Circuits.Studies.Sensitivity;

namespace Circuits.Rendering.Json;

internal sealed class MatterFields
{
    private readonly SizeEffect effect;

    internal MatterFields(SizeEffect effect) => this.effect = effect;

    [Description("What it is of.")] public string Size => effect.Size;
    [Description("What was assumed.")] public Phrase Assumed => effect.Assumed;
    [Description("The less that was tried, in words.")] public Phrase Less => effect.Less;
    [Description("The more that was tried, in words.")] public Phrase More => effect.More;
    [Description("The number of the answer that it moves most.")] public Phrase Of => effect.Of;
    [Description("That number with what was assumed; null where there is none.")] public double? AsAssumed => Fields.Rounded(effect.AsAssumed, 3);
    [Description("With less.")] public double? WithLess => Fields.Rounded(effect.WithLess, 3);
    [Description("With more.")] public double? WithMore => Fields.Rounded(effect.WithMore, 3);
}
