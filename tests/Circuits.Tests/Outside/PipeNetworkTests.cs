using Circuits.Laws;
using Circuits.Solving.Flow;
using Xunit;

namespace Circuits.Tests.Outside;

/// <summary>
/// Published pipe networks, solved by the machinery that solves valve bodies: links bring laws of their own. In feet and cubic feet a second,
/// as published; a foot of water is 2989 Pa.
/// </summary>
public class PipeNetworkTests
{
    private const double Foot = 2989.067;
    private const double CubicFoot = 0.028316846592;

    /// <summary>US gallons a minute in a cubic foot a second.</summary>
    private const double Gallons = 448.831;

    /// <summary>m/ft.</summary>
    private const double Metre = 0.3048;

    /// <summary>
    /// EPANET, example network Net1: Hazen-Williams with C = 100, a pump, a reservoir, a tank. Flows in gpm and heads in ft as its shipped
    /// results have them, at the start and after an hour, when the tank has risen. The network is from memory; the results are read.
    /// </summary>
    [Theory]
    [InlineData(970, new[] { 1866.17578, 1234.20715, 129.33514, 191.15813, 120.66487, 40.81052, -766.17584, 481.96863, 188.69621, 29.33513, 140.81051, 59.18948, 1866.17578 })]
    [InlineData(973.06812, new[] { 1848.5812, 1220.4274, 130.11162, 187.6893, 119.8884, 40.464489, -748.58112, 478.15378, 191.73459, 30.111609, 140.46449, 59.535515, 1848.5812 })]
    public void Net1(double tank, double[] flows)
    {
        string[] nodes = ["", "9", "2", "10", "11", "12", "13", "21", "22", "23", "31", "32"];
        (string A, string B, double Length, double Inches)[] pipes =
        [
            ("10", "11", 10530, 18), ("11", "12", 5280, 14), ("12", "13", 5280, 10), ("21", "22", 5280, 10), ("22", "23", 5280, 12), ("31", "32", 5280, 6),
            ("2", "12", 200, 18), ("11", "21", 5280, 10), ("12", "22", 5280, 12), ("13", "23", 5280, 8), ("21", "31", 5280, 8), ("22", "32", 5280, 6),
        ];
        var demands = new Dictionary<string, double>
        {
            ["11"] = 150,
            ["12"] = 150,
            ["13"] = 100,
            ["21"] = 150,
            ["22"] = 200,
            ["23"] = 150,
            ["31"] = 100,
            ["32"] = 100,
        };
        int Cell(string node) => Array.IndexOf(nodes, node);
        List<FlowElement> links =
        [
            .. pipes.Select(pipe => Link(Cell(pipe.A), Cell(pipe.B), HazenWilliams(pipe.Length, pipe.Inches / 12, 100))),
            Link(Cell("9"), Cell("10"), Pump(333.3333, 3.7037e-5 * Gallons * Gallons)),
            .. demands.Select(demand => Link(Cell(demand.Key), 0, _ => new LinkFlow(demand.Value / Gallons * CubicFoot, 0))),
        ];
        var balance = Solve(nodes.Length, links, (Cell("9"), 800), (Cell("2"), tank));
        for (var i = 0; i < flows.Length; i++) Assert.Equal(flows[i], balance.Flow[i] / CubicFoot * Gallons, 0.01);
        if (tank > 970) return;
        (string Node, double Head)[] heads =
        [
            ("10", 1004.34741), ("11", 985.23035), ("12", 970.06982), ("13", 968.87268), ("21", 971.54663), ("22", 969.07837), ("23", 968.64520), ("31", 967.39160), ("32", 965.68933),
        ];
        foreach (var (node, head) in heads) Assert.Equal(head, balance.Pressure[Cell(node)] / Foot, 0.001);
    }

    /// <summary>
    /// R. W. Jeppson, Steady Flow Analysis of Pipe Networks (1974), ch. 7, by the method of Hardy Cross: two loops, seven pipes. Flows in cfs as the
    /// re-implementation's reference output has them, which stops its iteration early (0.1 %); solved exactly elsewhere, to six digits.
    /// </summary>
    [Fact]
    public void Two_loops_of_Hardy_Cross()
    {
        // What the junctions take follows from the flows that the method starts with.
        double[] start = [1.67, 3.45, 1.0, 1.67, 1.78, 1.56, .67];
        (int A, int B, double Inches, double Length)[] pipes =
            [(1, 2, 12, 3000), (2, 3, 14, 2000), (4, 3, 10, 3000), (1, 4, 10, 2000), (5, 2, 14, 3000), (5, 6, 10, 2000), (6, 3, 12, 3000)];
        var takes = new double[7];
        foreach (var (i, pipe) in pipes.Index())
        {
            takes[pipe.A] -= start[i];
            takes[pipe.B] += start[i];
        }

        double[] printed = [1.7474, 3.4873, .92260, 1.5926, 1.7399, 1.6001, .71006];
        double[] exact = [1.747410, 3.487355, .922590, 1.592590, 1.739945, 1.600055, .710055];
        double[] losses = [4.877, 5.6518, 3.6078, 6.9209, 2.2031, 6.9843, .8706];
        Compare(pipes, .012, takes, printed, 1e-3, exact, losses);
    }

    /// <summary>The same, ch. 5, by the linear method: two loops, six junctions.</summary>
    [Fact]
    public void Two_loops_of_the_linear_method()
    {
        (int A, int B, double Inches, double Length)[] pipes =
            [(1, 2, 8, 1106), (3, 2, 12, 751), (4, 3, 10, 1000), (1, 4, 12, 500), (2, 5, 10, 1200), (6, 5, 6, 600), (6, 3, 8, 800)];
        double[] takes = [0, -2000 / Gallons, 0, 1500 / Gallons, 1000 / Gallons, 1500 / Gallons, -2000 / Gallons];
        double[] printed = [1.0326, .65547, 1.1954, 3.4234, 1.6881, 1.6540, 2.8021];
        double[] exact = [1.032806, .655856, 1.195204, 3.423214, 1.688662, 1.653353, 2.802667];
        double[] losses = [5.0285, .1839, 1.9246, 2.9200, 4.5100, 30.4270, 25.7331];
        Compare(pipes, .0102, takes, printed, 1e-3, exact, losses);
    }

    private static void Compare(
        (int A, int B, double Inches, double Length)[] pipes, double roughInches, double[] takes, double[] printed, double roughly, double[] exact, double[] losses)
    {
        List<FlowElement> links =
        [
            .. pipes.Select(pipe => Link(pipe.A, pipe.B, Darcy(pipe.Length, pipe.Inches / 12, roughInches / pipe.Inches))),
            .. takes.Index().Skip(2).Select(take => Link(take.Index, 0, _ => new LinkFlow(take.Item * CubicFoot, 0))),
        ];
        var balance = Solve(takes.Length, links, (1, 100));
        for (var i = 0; i < pipes.Length; i++)
        {
            var flow = balance.Flow[i] / CubicFoot;
            var loss = (balance.Pressure[pipes[i].A] - balance.Pressure[pipes[i].B]) / Foot;
            Assert.Equal(printed[i], flow, roughly * printed[i]);
            Assert.Equal(exact[i], flow, 1e-4 * exact[i]);
            Assert.Equal(losses[i], loss, 1e-3 * losses[i]);
        }
    }

    private static FlowBalance Solve(int cells, List<FlowElement> links, params (int Cell, double Feet)[] heads)
    {
        var network = new FlowNetwork { Cells = cells, Names = [.. Enumerable.Range(0, cells).Select(cell => $"{cell}")], Elements = [.. links] }.Order();
        var balance = new FlowBalance(network);
        balance.Set(FlowConditions.None, heads.Select(head => (head.Cell, head.Feet * Foot)));
        Assert.True(new SteadyFlow(network, balance).Solve().Converged);
        return balance;
    }

    private static FlowElement Link(int a, int b, Func<double, LinkFlow> law) => new() { Kind = FlowKind.Own, A = a, B = b, Area = 0, Law = (_, difference) => law(difference), DependsOn = [a, b] };

    /// <summary>h = 4.727 C^-1.852 d^-4.871 L Q^1.852, in ft and cfs; straight through zero below a millionth of a foot.</summary>
    private static Func<double, LinkFlow> HazenWilliams(double length, double feet, double smoothness)
    {
        const double least = 1e-6;
        var resistance = 4.727 * Math.Pow(smoothness, -1.852) * Math.Pow(feet, -4.871) * length;
        return pascals =>
        {
            var head = pascals / Foot;
            var from = Math.Max(Math.Abs(head), least);
            var flow = Math.Pow(from / resistance, 1 / 1.852) * CubicFoot;
            return from == least
                ? new LinkFlow(flow / least * head, flow / least / Foot)
                : new LinkFlow(Math.Sign(head) * flow, flow / (1.852 * from) / Foot);
        };
    }

    /// <summary>Rises by h0 - r Q^2, in ft and cfs.</summary>
    private static Func<double, LinkFlow> Pump(double shutOff, double resistance) => pascals =>
    {
        var left = Math.Max(shutOff + (pascals / Foot), 1e-3);
        var flow = Math.Sqrt(left / resistance) * CubicFoot;
        return new LinkFlow(flow, flow / (2 * left) / Foot);
    };

    /// <summary>Darcy-Weisbach with Colebrook's factor: the library's own law of friction, in water of 1.217e-5 ft2/s and with 2 g = 64.4 ft/s2.</summary>
    private static Func<double, LinkFlow> Darcy(double length, double feet, double roughness) => pascals =>
        LineFriction.Flow(
            Math.PI / 4 * feet * feet * Metre * Metre, feet * Metre, length * Metre, pascals, Foot / Metre / (32.2 * Metre), 1.217e-5 * Metre * Metre, roughness);
}
