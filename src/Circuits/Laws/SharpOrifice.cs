namespace Circuits.Laws;

/// <summary>
/// A hole in a thin sheet. At high Reynolds numbers Q = Cd A sqrt(2 dp / rho); at low ones, where Cd falls as delta sqrt(Re),
/// Q = 2 delta^2 D A dp / mu, linear in dp. Between them one smooth function with exactly these two ends:
/// <code>Q = Cd A sqrt(2 / rho) dp / (dp^2 + dpt^2)^(1/4),   dpt = (rho / 2) (Ret nu / (Cd D))^2</code>
/// Ret = (Cd / delta)^2 is the Reynolds number Q D / (A nu) at which the two ends cross. Odd, rising, smooth, with a finite slope at zero.
/// Source: turbulent end M. G. Rabie, "Fluid Power Engineering", McGraw-Hill 2009, eq 2.36, p. 27; laminar end from memory of
/// H. E. Merritt, "Hydraulic Control Systems", Wiley 1967, ch. 3. The blend is the project's own.
/// </summary>
internal static class SharpOrifice
{
    /// <summary>
    /// Discharge coefficient of a sharp hole, small against its passage: pi / (pi + 2) (Rabie, eq 2.39); 0.6 to 0.65 in practice (p. 27).
    /// </summary>
    public const double Discharge = 0.611;

    /// <summary>Reynolds number between laminar and turbulent of a round hole: (0.611 / 0.2)^2; delta 0.2 from memory of Merritt, ch. 3.</summary>
    public const double TransitionReynolds = 9.33;

    /// <summary>The same of a long slit: (0.611 / 0.157)^2, with twice its width as D; delta 0.157 from memory of Merritt, ch. 3.</summary>
    public const double SlitTransitionReynolds = 15.1;

    /// <summary>Flow through a round hole.</summary>
    /// <param name="area">Open area, m2; zero or less is shut. Not infinite.</param>
    /// <param name="dp">Pressure difference, Pa, either sign.</param>
    /// <param name="density">Density, kg/m3, above zero.</param>
    /// <param name="kinematicViscosity">Kinematic viscosity, m2/s, above zero.</param>
    public static LinkFlow Flow(double area, double dp, double density, double kinematicViscosity) =>
        area > 0 ? Flow(area, DiameterOf(area), dp, density, kinematicViscosity, Discharge, TransitionReynolds) : LinkFlow.None;

    /// <summary>Flow through an opening of any shape.</summary>
    /// <param name="area">Open area, m2; zero or less is shut. Not infinite.</param>
    /// <param name="hydraulicDiameter">Four times the area over its edge, m, above zero.</param>
    /// <param name="dp">Pressure difference, Pa, either sign.</param>
    /// <param name="density">Density, kg/m3, above zero.</param>
    /// <param name="kinematicViscosity">Kinematic viscosity, m2/s, above zero.</param>
    /// <param name="discharge">Discharge coefficient at high Reynolds numbers, above zero.</param>
    /// <param name="transitionReynolds">Reynolds number between laminar and turbulent, above zero.</param>
    public static LinkFlow Flow(
        double area, double hydraulicDiameter, double dp, double density, double kinematicViscosity,
        double discharge = Discharge, double transitionReynolds = TransitionReynolds)
    {
        if (!(area > 0)) return LinkFlow.None;
        return Sized(area, hydraulicDiameter, density, kinematicViscosity, discharge, transitionReynolds).Flow(dp);
    }

    /// <summary>The law of a round hole in oil that stays the same, for many pressure differences.</summary>
    /// <param name="area">Open area, m2, above zero.</param>
    /// <param name="density">Density, kg/m3, above zero.</param>
    /// <param name="kinematicViscosity">Kinematic viscosity, m2/s, above zero.</param>
    public static OrificeCurve Sized(double area, double density, double kinematicViscosity) =>
        Sized(area, DiameterOf(area), density, kinematicViscosity, Discharge, TransitionReynolds);

    /// <summary>
    /// The same of a slot: four times its area over its edge is its diameter, and its transition lies between that of a long slit and that of a round hole,
    /// by how long it is (the project's own).
    /// </summary>
    /// <param name="area">Open area, m2, above zero.</param>
    /// <param name="width">Its shorter side, m, above zero.</param>
    /// <param name="length">Its longer side, m.</param>
    /// <param name="density">Density, kg/m3, above zero.</param>
    /// <param name="kinematicViscosity">Kinematic viscosity, m2/s, above zero.</param>
    public static OrificeCurve SizedSlot(double area, double width, double length, double density, double kinematicViscosity)
    {
        var transition = SlitTransitionReynolds + (Math.Min(width / length, 1) * (TransitionReynolds - SlitTransitionReynolds));
        return Sized(area, 2 * width * length / (width + length), density, kinematicViscosity, Discharge, transition);
    }

    private static OrificeCurve Sized(
        double area, double hydraulicDiameter, double density, double kinematicViscosity, double discharge, double transitionReynolds)
    {
        var speed = transitionReynolds * kinematicViscosity / (discharge * hydraulicDiameter);
        var transition = density / 2 * speed * speed;
        return new OrificeCurve(discharge * area * Math.Sqrt(2 / density), transition * transition);
    }

    /// <summary>The discharge coefficient that the law amounts to at a pressure difference other than zero: from 0 up to <paramref name="discharge"/>.</summary>
    /// <param name="hydraulicDiameter">Hydraulic diameter, m.</param>
    /// <param name="dp">Pressure difference, Pa.</param>
    /// <param name="density">Density, kg/m3.</param>
    /// <param name="kinematicViscosity">Kinematic viscosity, m2/s.</param>
    /// <param name="discharge">Discharge coefficient at high Reynolds numbers.</param>
    /// <param name="transitionReynolds">Reynolds number between laminar and turbulent.</param>
    public static double DischargeAt(
        double hydraulicDiameter, double dp, double density, double kinematicViscosity,
        double discharge = Discharge, double transitionReynolds = TransitionReynolds) =>
        Flow(1, hydraulicDiameter, Math.Abs(dp), density, kinematicViscosity, discharge, transitionReynolds).Flow / Math.Sqrt(2 * Math.Abs(dp) / density);

    /// <summary>The diameter of the round hole with this area, m.</summary>
    /// <param name="area">The area, m2.</param>
    public static double DiameterOf(double area) => Math.Sqrt(4 / Math.PI * area);
}

/// <summary>A hole's flow by pressure difference alone; see <see cref="SharpOrifice"/>.</summary>
/// <param name="PerRoot">Flow by the root of pressure difference far above the transition, m3/(s Pa^0.5).</param>
/// <param name="TransitionSquared">Square of the pressure difference at the transition, Pa2, above zero.</param>
internal readonly record struct OrificeCurve(double PerRoot, double TransitionSquared)
{
    /// <summary>Flow and its slope.</summary>
    /// <param name="dp">Pressure difference, Pa, either sign.</param>
    public LinkFlow Flow(double dp)
    {
        var square = (dp * dp) + TransitionSquared;
        var root = Math.Sqrt(square);
        var flow = PerRoot / Math.Sqrt(root);
        return new LinkFlow(flow * dp, flow * ((0.5 * dp * dp) + TransitionSquared) / square);
    }
}
