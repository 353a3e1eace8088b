using System.Collections.Immutable;
using Circuits.Model;
using Circuits.Studies.Matrix;

namespace Circuits.Rendering.Matrix;

/// <summary>Which shard of the rows a file holds, and of which run.</summary>
/// <param name="Number">The shard, counted from 1.</param>
/// <param name="Of">How many shards there are.</param>
/// <param name="Assemblies">How many assemblies all shards hold together.</param>
/// <param name="Inputs">A word for the files, choices and program that the rows come from; shards of one run have the same.</param>
public sealed record MatrixShard(int Number, int Of, long Assemblies, string Inputs)
{
    /// <summary>The assemblies of this shard: the number of the first, and one past the last.</summary>
    public (long From, long To) Range => MatrixSpace.Shard(Assemblies, Number, Of);
}

/// <summary>A row without its end, which names its group.</summary>
/// <param name="Text">The row up to there.</param>
/// <param name="Behaviour">What its assembly does, by the fingerprint that makes the group.</param>
/// <param name="Number">The assembly's number.</param>
public readonly record struct MatrixRow(string Text, UInt128 Behaviour, long Number);

/// <summary>How rows of a matrix are written: what stands before them, the rows, their ends.</summary>
public abstract class MatrixForm
{
    /// <summary>What ends a line.</summary>
    public abstract string LineEnd { get; }

    /// <summary>What stands before the rows, with its line end; empty for nothing.</summary>
    /// <param name="space">The assemblies.</param>
    /// <param name="shard">The shard that is written, or null for all rows.</param>
    public abstract string Head(MatrixSpace space, MatrixShard? shard);

    /// <summary>What makes rows of entries; not for use by several threads at once.</summary>
    /// <param name="space">The assemblies.</param>
    public abstract Func<MatrixEntry, MatrixRow> Rows(MatrixSpace space);

    /// <summary>A whole row, with its line end: its group's number is known.</summary>
    /// <param name="text">The row without its end.</param>
    /// <param name="group">The number.</param>
    public abstract string End(string text, int group);

    /// <summary>
    /// A whole row of a shard, with its line end. Its group's number is known only when the shards before it are, so
    /// it carries what makes the group instead.
    /// </summary>
    /// <param name="row">The row.</param>
    public abstract string EndOfShard(MatrixRow row);

    /// <summary>The shard that a head belongs to, with the head of all rows; null when it is the head of no shard.</summary>
    /// <param name="head">The first line of a file, without its end.</param>
    public abstract (MatrixShard Shard, string Head)? ReadHead(string head);

    /// <summary>A row of a shard; null when it is none.</summary>
    /// <param name="line">The line, without its end.</param>
    public abstract MatrixRow? ReadRow(string line);

    /// <summary>For each part and revision that is tried, what a row says of it.</summary>
    private protected static ImmutableArray<ImmutableArray<string>> Cells(MatrixSpace space, Func<Part, Revision, string> cell) =>
        [.. space.Unit.Parts.Zip(space.Choices, (part, revisions) => revisions.Select(revision => cell(part, revision)).ToImmutableArray())];

    /// <summary>The verdicts of an entry's gears and of its worst change as a key: those that are alike have the same text in a row.</summary>
    private protected static string VerdictKey(MatrixEntry entry) =>
        string.Create(entry.Behaviour.Gears.Length + 1, entry, static (key, entry) =>
        {
            for (var i = 0; i < entry.Behaviour.Gears.Length; i++) key[i] = (char)('0' + (int)entry.Behaviour.Gears[i].Verdict);
            key[^1] = entry.Behaviour.WorstChange is { } change ? (char)('0' + (int)change) : '-';
        });
}
