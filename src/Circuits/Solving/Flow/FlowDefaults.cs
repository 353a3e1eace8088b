namespace Circuits.Solving.Flow;

/// <summary>What flow needs and files do not give: taken where it is missing, and reported as assumed where it sways the answer.</summary>
public static class FlowDefaults
{
    /// <summary>A regulator's port opens fully over this difference from its set pressure, kPa (the droop).</summary>
    public const double RegulatorBand = 20;

    /// <summary>Each outlet of a spilling regulator opens fully over this excess, kPa, one after the other.</summary>
    public const double SpillBand = 10;

    /// <summary>A screen's bypass opens fully over this difference, kPa, beyond the one at which it begins to.</summary>
    public const double BypassBand = 10;

    /// <summary>A ball lies on its seat, or at the other one, at this difference in pressure, kPa.</summary>
    public const double BallBand = 1;

    /// <summary>A spool without spring rate or travel moves fully over this share of its spring's preload.</summary>
    public const double SpoolRange = 0.1;

    /// <summary>The least force over which a spool moves, N.</summary>
    public const double LeastSpoolForce = 0.5;

    /// <summary>What holds a spool that has stuck, N: more than any pressure makes.</summary>
    public const double StuckForce = 1e6;

    /// <summary>A spool follows its forces with this lag, s: it has to push its own oil out of the way.</summary>
    public const double SpoolLag = 0.003;

    /// <summary>Pump displacement, mL/rev.</summary>
    public const double Displacement = 16;

    /// <summary>Pump volumetric efficiency.</summary>
    public const double Efficiency = 0.85;

    /// <summary>Pump speed at idle, rpm.</summary>
    public const double IdleSpeed = 700;

    /// <summary>Pump speed on the road, rpm.</summary>
    public const double RoadSpeed = 2000;

    /// <summary>Oil temperature when hot, degC.</summary>
    public const double HotTemperature = 90;

    /// <summary>Oil in a passage that gives neither volume nor length and section, mL.</summary>
    public const double PassageVolume = 2;

    /// <summary>A clutch piston's area, mm2.</summary>
    public const double PistonArea = 8000;

    /// <summary>A clutch's volume until its plates touch, mL.</summary>
    public const double Fill = 20;

    /// <summary>The head of oil in a clutch's chamber, kPa: some 120 mm. Below it what the piston does not sweep runs empty.</summary>
    public const double ChamberHead = 1;

    /// <summary>A return spring's force at the start of the stroke, as a pressure on its piston, kPa.</summary>
    public const double ReturnPressure = 60;

    /// <summary>A return spring's rise over the stroke, as a share of its force at the start.</summary>
    public const double ReturnRise = 0.2;

    /// <summary>The least rate of a spring, N/mm: one without any would have no place to stand.</summary>
    public const double LeastRate = 0.5;

    /// <summary>Friction faces of a clutch.</summary>
    public const int Plates = 8;

    /// <summary>Coefficient of friction of a clutch's plates in oil.</summary>
    public const double Friction = 0.12;

    /// <summary>Mean friction radius of a clutch, mm.</summary>
    public const double Radius = 60;

    /// <summary>Torque at the input during a shift, N m.</summary>
    public const double ShiftTorque = 100;

    /// <summary>Torque at the input while a gear is engaged at a stand, N m: what a converter passes on at idle.</summary>
    public const double StandingTorque = 30;

    /// <summary>How far a clutch's plates, their cushion and their drum yield, mm, when 1000 kPa press them.</summary>
    public const double PackYield = 0.2;
}
