using System.ComponentModel;
using Circuits.Studies.Spread;

namespace Circuits.Rendering.Json;

/// <summary>How far results spread; each document adds what spreads.</summary>
internal abstract class SpreadFields(SpreadRequest request, int sizes)
{
    [Bounds(2)] public int Samples => request.Count;
    [Bounds(0), Description("The same seed draws the same units.")] public ulong Seed => request.Seed;
    [Bounds(0), Description("How many sizes of the file carry a tolerance.")] public int Sizes => sizes;
}

internal sealed class RangeFields
{
    private readonly SpreadRange range;

    internal RangeFields(SpreadRange range) => this.range = range;

    [Description("Five of a hundred samples lie below.")] public double Low => Fields.Rounded(range.Low, 3);
    [Description("Half lie below.")] public double Middle => Fields.Rounded(range.Middle, 3);
    [Description("Five of a hundred lie above.")] public double High => Fields.Rounded(range.High, 3);
    [Description("How many samples of a hundred have no such value.")] public double MissingPercent => Fields.Rounded(range.Missing, 3);

    public static RangeFields? Of(SpreadRange? range) => range is { } known ? new RangeFields(known) : null;
}
