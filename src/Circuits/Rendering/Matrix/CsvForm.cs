using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Circuits.Judging;
using Circuits.Studies.Matrix;

namespace Circuits.Rendering.Matrix;

/// <summary>
/// Comma-separated values (RFC 4180): a line of headings, then a line an assembly. A cell that a spreadsheet would run as a formula
/// begins with an apostrophe.
/// </summary>
public sealed partial class CsvForm : MatrixForm
{
    /// <summary>What a spreadsheet takes for the beginning of a formula, or for blanks before one.</summary>
    private const string Formula = "=+-@\t\r\n＝＋－＠";

    /// <inheritdoc/>
    public override string LineEnd => "\r\n";

    /// <inheritdoc/>
    public override string Head(MatrixSpace space, MatrixShard? shard)
    {
        var headings = space.Unit.Parts.Select(part => part.Name).Append("matched").Append("verdict")
            .Concat(space.Gears.Select(gear => $"gear {space.Unit.Gears[gear].Name}")).Append("worst change").Append("mode").Append("group");
        return string.Join(',', headings.Select(Cell)) + (shard is null ? "" : "," + Cell(Heading(shard))) + LineEnd;
    }

    /// <inheritdoc/>
    public override Func<MatrixEntry, MatrixRow> Rows(MatrixSpace space)
    {
        var parts = Cells(space, (_, revision) => Cell(revision.Name) + ",");
        var verdicts = new Dictionary<string, string>();
        var digits = new int[parts.Length];
        var text = new StringBuilder();
        return entry =>
        {
            space.Decode(entry.Number, digits);
            text.Clear();
            for (var part = 0; part < digits.Length; part++) text.Append(parts[part][digits[part]]);
            if (space.MatchedAt(entry.Number) is { } set) text.Append(Cell(set));
            var key = VerdictKey(entry);
            if (!verdicts.TryGetValue(key, out var tail)) verdicts[key] = tail = $"{Verdicts(entry)},{Words.Of(space.Mode)}";
            return new MatrixRow(text.Append(tail).ToString(), entry.Behaviour.Fingerprint, entry.Number);
        };
    }

    /// <inheritdoc/>
    public override string End(string text, int group) => string.Create(CultureInfo.InvariantCulture, $"{text},{group}\r\n");

    /// <inheritdoc/>
    public override string EndOfShard(MatrixRow row) =>
        string.Create(CultureInfo.InvariantCulture, $"{row.Text},,{row.Number}:{row.Behaviour:x32}\r\n");

    /// <inheritdoc/>
    public override (MatrixShard Shard, string Head)? ReadHead(string head)
    {
        if (ShardHeading().Match(head) is not { Success: true } match) return null;
        var numbers = new int[2];
        for (var i = 0; i < 2; i++)
        {
            if (!int.TryParse(match.Groups[i + 1].ValueSpan, NumberStyles.None, CultureInfo.InvariantCulture, out numbers[i])) return null;
        }

        return long.TryParse(match.Groups[3].ValueSpan, NumberStyles.None, CultureInfo.InvariantCulture, out var assemblies)
            ? (new MatrixShard(numbers[0], numbers[1], assemblies, match.Groups[4].Value), head[..match.Index] + LineEnd) : null;
    }

    /// <inheritdoc/>
    public override MatrixRow? ReadRow(string line)
    {
        var at = line.LastIndexOf(",,", StringComparison.Ordinal);
        var colon = line.LastIndexOf(':');
        if (at < 0 || colon < at || line.Length - colon != 33) return null;
        return long.TryParse(line.AsSpan((at + 2)..colon), NumberStyles.None, CultureInfo.InvariantCulture, out var row)
            && UInt128.TryParse(line.AsSpan(colon + 1), NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out var made)
            ? new MatrixRow(line[..at], made, row) : null;
    }

    private static string Heading(MatrixShard shard) =>
        string.Create(CultureInfo.InvariantCulture, $"shard {shard.Number} of {shard.Of} of {shard.Assemblies} assemblies of {shard.Inputs}");

    [GeneratedRegex(@",shard (\d+) of (\d+) of (\d+) assemblies of ([0-9a-z]+)$")]
    private static partial Regex ShardHeading();

    private static string Verdicts(MatrixEntry entry) =>
        $",{Words.Of(entry.Behaviour.Verdict)}{string.Concat(entry.Behaviour.Gears.Select(gear => "," + Words.Of(gear.Verdict)))},{(entry.Behaviour.WorstChange is { } change ? VerdictText.Of(change) : "")}";

    /// <summary>A cell: made harmless, then quoted where it must be.</summary>
    internal static string Cell(string text)
    {
        text = Printable.Of(text);
        if (text.Length > 0 && Formula.Contains(text[0], StringComparison.Ordinal)) text = "'" + text;
        return text.AsSpan().IndexOfAny(",\"\r\n") < 0 ? text : $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
    }
}
