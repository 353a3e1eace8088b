using System.Collections.Immutable;
using Circuits.Studies.Spread;

namespace Circuits.Studies.Pressures;

/// <summary>Where the pressures of sampled units lie.</summary>
/// <param name="Request">How many samples, and which.</param>
/// <param name="Sizes">How many sizes carry a tolerance.</param>
/// <param name="Points">The conditions, as in the report.</param>
public sealed record PressureSpread(SpreadRequest Request, int Sizes, ImmutableArray<PressureSpreadPoint> Points)
{
    /// <summary>The spread over reports of the same gears under the same conditions.</summary>
    /// <param name="request">How many samples, and which.</param>
    /// <param name="sizes">How many sizes carry a tolerance.</param>
    /// <param name="samples">The reports; at least one.</param>
    public static PressureSpread Of(SpreadRequest request, int sizes, ImmutableArray<PressureReport> samples) => new(
        request, sizes,
        [
            .. samples[0].Points.Select((point, p) => new PressureSpreadPoint(
                point.At,
                [
                    .. point.Gears.Select((gear, g) =>
                    {
                        var gears = samples.Select(sample => sample.Points[p].Gears[g]).ToList();
                        return new PressureSpreadGear(
                            gear.Gear, 100.0 * gears.Count(each => each.Converged) / gears.Count,
                            Range(each => each.LineKilopascals),
                            [.. samples[0].Taps.Select((_, t) => SpreadRange.Of([.. gears.Select(each => each.Converged ? each.Taps[t] : null)]))]);

                        SpreadRange? Range(Func<PressureGear, double> value) => SpreadRange.Of([.. gears.Select(each => each.Converged ? value(each) : (double?)null)]);
                    }),
                ])),
        ]);
}

/// <summary>One condition.</summary>
/// <param name="At">The condition.</param>
/// <param name="Gears">The gears.</param>
public sealed record PressureSpreadPoint(OperatingPoint At, ImmutableArray<PressureSpreadGear> Gears);

/// <summary>One gear under one condition.</summary>
/// <param name="Gear">The gear.</param>
/// <param name="Converged">For how many samples of a hundred there is an answer.</param>
/// <param name="Line">Pressure at the pump, kPa.</param>
/// <param name="Taps">Each gauge port's pressure, kPa, in the order of the report; null where no sample has it.</param>
public sealed record PressureSpreadGear(string Gear, double Converged, SpreadRange? Line, ImmutableArray<SpreadRange?> Taps);
