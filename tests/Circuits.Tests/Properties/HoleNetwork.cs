using System.Collections.Immutable;
using Circuits.Solving.Flow;
using CsCheck;

namespace Circuits.Tests.Properties;

/// <summary>A hole between two places; 0 is sump.</summary>
internal sealed record HoleOf(int A, int B, double Millimetres);

/// <summary>A random network of holes without valves.</summary>
/// <param name="Places">How many places, besides the sump.</param>
/// <param name="Holes">Its holes.</param>
/// <param name="Feeds">Places whose pressure is fixed, and kPa.</param>
/// <param name="Viscosity">Of the oil, m2/s.</param>
internal sealed record HoleNetwork(int Places, ImmutableArray<HoleOf> Holes, ImmutableArray<(int Place, double Kilopascals)> Feeds, double Viscosity)
{
    /// <summary>Solves it from no pressure.</summary>
    public FlowBalance Solve()
    {
        var network = new FlowNetwork
        {
            Cells = Places + 1,
            Names = [.. Enumerable.Range(0, Places + 1).Select(cell => $"{cell}")],
            Elements = [.. Holes.Select(hole => Solving.Flow.RandomHoles.Hole(hole.A, hole.B, hole.Millimetres))],
        }.Order();
        var balance = new FlowBalance(network);
        balance.Set(new FlowConditions(850, Viscosity, default), Feeds.Select(feed => (feed.Place, 1e3 * feed.Kilopascals)));
        Converged = new SteadyFlow(network, balance).Solve().Converged;
        return balance;
    }

    /// <summary>Whether the last search found a steady state.</summary>
    public bool Converged { get; private set; }

    public IEnumerable<HoleNetwork> Smaller()
    {
        for (var i = 0; i < Holes.Length; i++) yield return this with { Holes = Holes.RemoveAt(i) };
        for (var i = 1; i < Feeds.Length; i++) yield return this with { Feeds = Feeds.RemoveAt(i) };
    }

    public override string ToString() =>
        FormattableString.Invariant($"{Places} places, {Viscosity} m2/s; feeds {string.Join(", ", Feeds)}; ") + string.Join(", ", Holes.Select(hole => FormattableString.Invariant($"{hole.A}-{hole.B} {hole.Millimetres}")));
}

/// <summary>Draws them: a tree or several, some holes more, drains, one to three feeds; oil thinner than water to cold.</summary>
internal sealed class HoleGen : Gen<HoleNetwork>
{
    public override HoleNetwork Generate(PCG pcg, Size? min, out Size size)
    {
        var dice = new Dice(pcg);
        var places = dice.Between(2, 24);
        var holes = new List<HoleOf>();
        for (var place = 2; place <= places; place++)
        {
            if (!dice.Chance(5)) holes.Add(new HoleOf(dice.Between(1, place - 1), place, dice.Real(0.3, 6)));
        }

        for (var k = dice.Between(0, places); k > 0; k--) holes.Add(new HoleOf(dice.Between(1, places), dice.Between(0, places), dice.Real(0.3, 6)));
        holes.Add(new HoleOf(places, 0, dice.Real(0.3, 3)));
        size = new Size((ulong)holes.Count);
        return new HoleNetwork(
            places, [.. holes.Where(hole => hole.A != hole.B)],
            [.. Enumerable.Range(0, dice.Between(1, 3)).Select(_ => (dice.Between(1, places), dice.Real(0, 1500))).DistinctBy(feed => feed.Item1)],
            dice.Pick([1e-7, 5e-6, 1e-5, 4e-5, 1e-3]));
    }
}
