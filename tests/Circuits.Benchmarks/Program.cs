using Circuits.Benchmarks;

if (args is ["matrix", .. var rest]) return MatrixLimits.Run(rest);
if (args is ["spice", ..]) return SpiceLimits.Run();
if (args is ["shifts"]) return SpiceLimits.RunShifts();
if (args is ["diagnose", .. var units]) return DiagnoseLimits.Run(units);
if (args is ["contradictions", .. var every]) return Contradictions.Run(every);
if (args is ["spice-verdicts", .. var assemblies]) return SpiceVerdictCount.Run(assemblies);
if (args is ["culprits", .. var count]) return CulpritCount.Run(count);
if (args is ["report"]) return ReportLimits.Run();
if (args is ["generate"])
{
    Console.Out.Write(GeneratedUnit.Text());
    return 0;
}

// In this process, so that nothing has to be built or restored while it runs.
var config = DefaultConfig.Instance.AddJob(Job.ShortRun.WithToolchain(InProcessEmitToolchain.Instance));
Console.WriteLine($"// {Environment.ProcessorCount} cores");
BenchmarkSwitcher.FromTypes([typeof(FullUnit)]).Run(args.Length == 0 ? ["--filter", "*"] : args, config);
return 0;
