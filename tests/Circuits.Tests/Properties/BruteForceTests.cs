using Xunit;

namespace Circuits.Tests.Properties;

/// <summary>
/// Holds the solver against states found by trying every position of every spool, ball and regulator, with pressures from
/// a relaxation that shares no code with it. Source: the definitions themselves; four truths, the last resort of which is
/// to try everything.
/// </summary>
public sealed class BruteForceTests
{
    [Fact]
    public void Every_state_that_the_solver_gives_agrees_with_itself() =>
        Property.ForAll(new UnitGen(revisions: true), 300, unit => BruteCheck.FirstFault(unit, BruteCheck.FaultOf), Shrink.Of, unit => SpecText.Of(unit));

    [Fact]
    public void A_gear_never_settles_only_where_no_state_agrees_with_itself() =>
        Property.ForAll(new UnitGen(revisions: false), 600, unit => BruteCheck.FirstFault(unit, BruteCheck.WrongDespair), Shrink.Of, unit => SpecText.Of(unit));
}
