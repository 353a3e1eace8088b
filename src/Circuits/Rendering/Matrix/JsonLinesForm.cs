using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using Circuits.Judging;
using Circuits.Rendering.Json;
using Circuits.Studies.Matrix;

namespace Circuits.Rendering.Matrix;

/// <summary>A JSON object a line: <see cref="MatrixRowFields"/> or <see cref="ShardRowFields"/>, put together from parts that are made once.</summary>
public sealed class JsonLinesForm : MatrixForm
{
    private const string Behaviour = ",\"behaviour\":\"";

    /// <inheritdoc/>
    public override string LineEnd => "\n";

    /// <summary>Nothing stands before all rows; before those of a shard stands an object that says which shard it is.</summary>
    public override string Head(MatrixSpace space, MatrixShard? shard) => shard is null ? "" : JsonText.Line(new ShardDocument(space.Unit.Name, shard));

    /// <inheritdoc/>
    public override Func<MatrixEntry, MatrixRow> Rows(MatrixSpace space)
    {
        var parts = Cells(space, (part, revision) => $"{Quote(part.Name)}:{Quote(revision.Name)}");
        var gears = space.Gears.Select(gear => Quote(space.Unit.Gears[gear].Name)).ToList();
        var verdicts = new Dictionary<string, string>();
        var digits = new int[parts.Length];
        var text = new StringBuilder();
        return entry =>
        {
            space.Decode(entry.Number, digits);
            text.Clear().Append("{\"assembly\":{");
            for (var part = 0; part < digits.Length; part++) text.Append(part > 0 ? "," : "").Append(parts[part][digits[part]]);
            text.Append("},\"matched\":").Append(space.MatchedAt(entry.Number) is { } set ? Quote(set) : "null");
            var key = VerdictKey(entry);
            if (!verdicts.TryGetValue(key, out var tail)) verdicts[key] = tail = Verdicts(entry, gears, space.Mode);
            return new MatrixRow(text.Append(tail).ToString(), entry.Behaviour.Fingerprint, entry.Number);
        };
    }

    /// <inheritdoc/>
    public override string End(string text, int group) => string.Create(CultureInfo.InvariantCulture, $"{text},\"group\":{group}}}\n");

    /// <inheritdoc/>
    public override string EndOfShard(MatrixRow row) =>
        string.Create(CultureInfo.InvariantCulture, $"{row.Text},\"group\":null,\"row\":{row.Number}{Behaviour}{row.Behaviour:x32}\"}}\n");

    /// <inheritdoc/>
    public override (MatrixShard Shard, string Head)? ReadHead(string head)
    {
        try
        {
            if (JsonNode.Parse(head) is not JsonObject json || (string?)json["schema"] != Document.SchemaOf(ShardDocument.Name)) return null;
            return (new MatrixShard((int)json["shard"]!, (int)json["shards"]!, (long)json["assemblies"]!, (string)json["inputs"]!), "");
        }
        catch (Exception fault) when (fault is JsonException or InvalidOperationException or FormatException or NullReferenceException or ArgumentNullException)
        {
            return null;
        }
    }

    /// <inheritdoc/>
    public override MatrixRow? ReadRow(string line)
    {
        const string Group = ",\"group\":null,\"row\":";
        var group = line.LastIndexOf(Group, StringComparison.Ordinal);
        var behaviour = line.LastIndexOf(Behaviour, StringComparison.Ordinal);
        if (!line.StartsWith("{\"assembly\":{", StringComparison.Ordinal) || group < 0 || behaviour < group || !line.EndsWith("\"}", StringComparison.Ordinal))
            return null;
        var number = line.AsSpan((group + Group.Length)..behaviour);
        var fingerprint = line.AsSpan((behaviour + Behaviour.Length)..^2);
        return long.TryParse(number, NumberStyles.None, CultureInfo.InvariantCulture, out var row) && fingerprint.Length == 32
            && UInt128.TryParse(fingerprint, NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out var made)
            ? new MatrixRow(line[..group], made, row) : null;
    }

    internal static string Quote(string text) => $"\"{Printable.Of(JavaScriptEncoder.UnsafeRelaxedJsonEscaping.Encode(text))}\"";

    private static string Verdicts(MatrixEntry entry, List<string> gears, JudgeMode mode)
    {
        var text = new StringBuilder($",\"verdict\":\"{Words.Of(entry.Behaviour.Verdict)}\",\"gears\":{{");
        for (var i = 0; i < gears.Count; i++)
            text.Append(i > 0 ? "," : "").Append(gears[i]).Append(":\"").Append(Words.Of(entry.Behaviour.Gears[i].Verdict)).Append('"');
        text.Append("},\"worstChange\":").Append(entry.Behaviour.WorstChange is { } change ? $"\"{VerdictText.Of(change)}\"" : "null");
        return text.Append(",\"mode\":\"").Append(Words.Of(mode)).Append('"').ToString();
    }
}
