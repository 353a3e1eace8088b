namespace Circuits.Stacking;

/// <summary>Sizes that are taken where a file gives none. Each use is reported as an assumption.</summary>
public static class Defaults
{
    /// <summary>A hole or other opening without a size, mm2 (a hole of about 5 mm).</summary>
    public const double OpeningArea = 20;

    /// <summary>A screen's clean mesh, mm2: wide, as such a mesh is meant to cost next to nothing.</summary>
    public const double MeshArea = 200;

    /// <summary>A spool's or the manual valve's port, mm2.</summary>
    public const double SpoolPortArea = 40;

    /// <summary>A regulator's port, mm2.</summary>
    public const double RegulatorPortArea = 30;

    /// <summary>A solenoid's port, mm2.</summary>
    public const double SolenoidPortArea = 3;

    /// <summary>A leak without a size, mm2.</summary>
    public const double LeakArea = 0.3;

    /// <summary>The land that a signal acts on, mm2.</summary>
    public const double SignalArea = 100;

    /// <summary>How much of its area a spool's port keeps when the spool has stuck midway and its laps are short.</summary>
    public const double MidwayShare = 0.1;

    /// <summary>What a pump makes when nothing regulates it, kPa.</summary>
    public const double PumpRelief = 2000;
}
