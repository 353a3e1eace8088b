using System.Collections.Immutable;
using System.ComponentModel;
using System.Text.Json.Serialization;
using Circuits.Findings;
using Circuits.Judging;
using Circuits.Model;

namespace Circuits.Rendering.Json;

[Description("Why a clutch or passage has, or lacks, pressure: trees of facts.")]
internal sealed class TraceDocument : JudgedDocument
{
    private readonly ImmutableArray<Trace> traces;

    internal TraceDocument(Assembly traced, ImmutableArray<string> nearest, ImmutableArray<Trace> traces) : base("trace", traced, nearest) => this.traces = traces;

    public IEnumerable<TraceFields> Traces => traces.Select(trace => new TraceFields(trace));
}

internal sealed class TraceFields
{
    private readonly Trace trace;

    internal TraceFields(Trace trace) => this.trace = trace;

    public string Gear => trace.Gear;
    [Description("The condition whose pressures are told; null for those of the static answer.")] public string? Condition => trace.At?.Name;
    [Description("The clutch or passage.")] public string Of => trace.Of;
    [Description("How supply reaches it, or where it stops.")] public FactFields Apply => new(trace.Apply);
    [Description("How its oil reaches sump, or where that stops.")] public FactFields Release => new(trace.Release);
}

internal sealed class FactFields : Placed
{
    private readonly TraceFact fact;

    internal FactFields(TraceFact fact) : base(fact.Place) => this.fact = fact;

    [Description("One sentence.")] public Phrase Fact => fact.Fact;

    [JsonPropertyOrder(1), Description("The facts that it follows from.")]
    public IEnumerable<FactFields> Because => fact.Because.Select(reason => new FactFields(reason));
}
