using Circuits.Model;
using Circuits.Networks;
using Circuits.Reading;
using Circuits.Solving;

namespace Circuits.Benchmarks;

/// <summary>What one matched assembly of the full demo unit costs, stage by stage, all gears.</summary>
[MemoryDiagnoser]
public class FullUnit
{
    private string path = "";
    private Assembly assembly = null!;
    private Plan plan = null!;
    private GearSolver solver = null!;
    private GearInputs[] gears = [];

    [GlobalSetup]
    public void Load()
    {
        path = Path.Combine(Root(), "circuits", "firth", "firth.yaml");
        var unit = CircuitReader.ReadFile(path).Unit ?? throw new InvalidOperationException($"{path} has errors");
        assembly = Assembly.DefaultOf(unit);
        var network = NetworkBuilder.Build(assembly);
        plan = Plan.Of(network);
        solver = new GearSolver(plan);
        gears = [.. unit.Gears.Select(gear => GearInputs.Of(network, gear))];
    }

    /// <summary>From YAML files to the model.</summary>
    [Benchmark]
    public Unit? Read() => CircuitReader.ReadFile(path).Unit;

    /// <summary>From the model to the compiled network of one assembly.</summary>
    [Benchmark]
    public Plan Stack() => Plan.Of(NetworkBuilder.Build(assembly));

    /// <summary>Every gear from rest.</summary>
    [Benchmark]
    public int SolveFromRest()
    {
        var settled = 0;
        foreach (var gear in gears)
        {
            if (solver.FromRest(gear).Settled) settled++;
        }

        return settled;
    }

    /// <summary>Every gear from rest and from its neighbours, as reports need it.</summary>
    [Benchmark]
    public SolvedAssembly SolveWithHistory() => SolvedAssembly.Of(plan);

    private static string Root()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "Circuits.sln"))) return folder.FullName;
        }

        throw new InvalidOperationException("not inside the repository");
    }
}
