namespace Circuits.Solving;

/// <summary>Decides, from pressures as they stand, where spools and balls should be; the law of each stands in its kind's file.</summary>
internal sealed partial class Mechanics(Plan plan, PressureField field);
