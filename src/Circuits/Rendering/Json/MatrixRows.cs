using System.ComponentModel;
using System.Text.Json.Serialization;
using Circuits.Judging.Changes;
using Circuits.Model;
using Circuits.Rendering.Matrix;

namespace Circuits.Rendering.Json;

/// <summary>A row as text. There may be millions, so <see cref="JsonLinesForm"/> puts them together from parts that it makes once.</summary>
/// <param name="Json">A <see cref="MatrixRowFields"/> as an object of JSON.</param>
internal readonly record struct RowLine(string Json);

/// <summary>What rows of all kinds tell of an assembly.</summary>
internal abstract record AnyRowFields(
    IReadOnlyDictionary<string, string> Assembly,

    [property: Description("The matched set that it is.")] string? Matched,
    [property: Description("The worst gear's.")] Verdict Verdict,
    IReadOnlyDictionary<string, Verdict> Gears,
    [property: Description("The worst change of gear; null where a gear is wrong, for then none is timed, and without flow.")] ShiftVerdict? WorstChange,
    [property: Description(VerdictDocument.Modes)] Judging.JudgeMode Mode);

/// <summary>A row.</summary>
internal sealed record MatrixRowFields(
    IReadOnlyDictionary<string, string> Assembly, string? Matched, Verdict Verdict, IReadOnlyDictionary<string, Verdict> Gears, ShiftVerdict? WorstChange, Judging.JudgeMode Mode,
    [property: JsonPropertyOrder(1), Bounds(1), Description("Groups are numbered in the order in which their first row comes.")] int Group) : AnyRowFields(Assembly, Matched, Verdict, Gears, WorstChange, Mode);

/// <summary>A row of a shard.</summary>
internal sealed record ShardRowFields(
    IReadOnlyDictionary<string, string> Assembly, string? Matched, Verdict Verdict, IReadOnlyDictionary<string, Verdict> Gears, ShiftVerdict? WorstChange, Judging.JudgeMode Mode,

    [property: JsonPropertyOrder(1), Only(null), Description("Known only when the shards are merged.")] int? Group,
    [property: JsonPropertyOrder(1), Bounds(0), Description("The row's number in the whole, from 0.")] long Row,
    [property: JsonPropertyOrder(1), Pattern("^[0-9a-f]{32}$"), Description("The same for rows of one group.")] string Behaviour) : AnyRowFields(Assembly, Matched, Verdict, Gears, WorstChange, Mode);

[Description("The first line of a shard of a matrix.")]
internal sealed class ShardDocument : Document
{
    public const string Name = "matrix-shard";

    private readonly string unit;
    private readonly MatrixShard shard;

    internal ShardDocument(string unit, MatrixShard shard) : base(Name) => (this.unit, this.shard) = (unit, shard);

    public string Unit => unit;
    [Bounds(1)] public int Shard => shard.Number;
    [Bounds(1)] public int Shards => shard.Of;
    [Bounds(1)] public long Assemblies => shard.Assemblies;
    [Description("The same for shards of the same files, options and program.")] public string Inputs => shard.Inputs;
}
