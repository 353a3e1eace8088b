using Circuits.Model;

namespace Circuits.Solving.Flow;

/// <summary>A clutch's sizes, with what is taken where the file gives none.</summary>
/// <param name="clutch">The clutch, with what part revisions change of it.</param>
internal sealed class ClutchSizes(Clutch clutch)
{
    /// <summary>Piston area, mm2.</summary>
    public double Area => clutch.Area?.SquareMillimetres ?? FlowDefaults.PistonArea;

    /// <summary>Volume until its plates touch, mL.</summary>
    public double Fill => clutch.Fill?.Millilitres ?? FlowDefaults.Fill;

    /// <summary>What it takes beyond what its piston sweeps, mL: nothing within what rounding leaves of a volume.</summary>
    public double DeadVolume => clutch is { Fill: { Millilitres: var fill }, Swept: { Millilitres: var swept } } && fill - swept > Clutch.VolumeRounding * fill ? fill - swept : 0;

    /// <summary>Stroke until its plates touch, mm; of the volume where that alone is given.</summary>
    public double Stroke => clutch.Stroke?.Millimetres ?? (Fill * 1000 / Area);

    /// <summary>Return spring at the start of the stroke, N.</summary>
    public double Spring => clutch.ReturnSpring?.Newtons ?? (FlowDefaults.ReturnPressure * Area / 1000);

    /// <summary>Return spring rate, N/mm.</summary>
    public double Rate => clutch.Rate?.NewtonsPerMillimetre ?? (FlowDefaults.ReturnRise * Math.Max(Spring, 1) / Stroke);

    /// <summary>Stiffness of the plates, N/mm.</summary>
    public double PackRate => clutch.PackRate?.NewtonsPerMillimetre ?? (Area / FlowDefaults.PackYield);

    /// <summary>Friction faces.</summary>
    public int Plates => clutch.Plates ?? FlowDefaults.Plates;

    /// <summary>Coefficient of friction.</summary>
    public double Friction => clutch.Friction ?? FlowDefaults.Friction;

    /// <summary>Mean friction radius, mm.</summary>
    public double Radius => clutch.Radius?.Millimetres ?? FlowDefaults.Radius;
}
