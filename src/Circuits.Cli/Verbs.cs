namespace Circuits.Cli;

/// <summary>Every verb there is.</summary>
internal static class Verbs
{
    private static readonly KeyValuePair<string, Func<CommonOptions, Verb>>[] Known =
    [
        new("check", CheckVerb.Create),
        new("gears", GearsVerb.Create),
        new("trace", TraceVerb.Create),
        new("what-if", WhatIfVerb.Create),
        new("matrix", MatrixVerb.Create),
        new("identify", IdentifyVerb.Create),
        new("diagnose", DiagnoseVerb.Create),
        new("remedy", RemedyVerb.Create),
        new("pressures", PressuresVerb.Create),
        new("shifts", ShiftsVerb.Create),
        new("size", SizeVerb.Create),
        new("air-check", AirCheckVerb.Create),
        new("hazards", HazardsVerb.Create),
        new("report", ReportVerb.Create),
        new("draw", DrawVerb.Create),
        new("schema", SchemaVerb.Create),
        new("explain", ExplainVerb.Create),
        new("new", _ => NewVerb.Create()),
        new("completion", CompletionVerb.Create),
    ];

    /// <summary>Their names, in the order of the help page.</summary>
    public static IEnumerable<string> Names => Known.Select(verb => verb.Key);

    /// <summary>
    /// The verb that the command line begins with, alone: making all takes longer than most commands. All of them where it begins
    /// with something else.
    /// </summary>
    /// <param name="args">The command line.</param>
    /// <param name="options">The options that verbs share.</param>
    public static Verb[] For(string[] args, CommonOptions options)
    {
        if (args.Length > 0)
        {
            foreach (var (name, create) in Known)
            {
                if (name == args[0]) return [create(options)];
            }
        }

        return [.. Known.Select(verb => verb.Value(options))];
    }
}
