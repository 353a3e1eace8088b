using System.Collections.Immutable;
using System.Globalization;
using Circuits.Findings;
using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace Circuits.Reading.Yaml;

/// <summary>
/// Builds the node tree of one file from the YAML parser's events. It keeps places, refuses what the language has no use
/// for, and stops at the first thing after which the rest cannot be trusted.
/// </summary>
internal sealed class YamlTree
{
    private readonly string text;
    private readonly string file;
    private readonly FindingList findings;
    private readonly Parser parser;
    private readonly Dictionary<string, (YamlNode Node, int Size)> anchors = new(StringComparer.Ordinal);
    private readonly List<Place> openBrackets = [];
    private int nodes;
    private int aliasNodes;

    private YamlTree(string text, string file, FindingList findings)
    {
        this.text = text;
        this.file = file;
        this.findings = findings;
        parser = new Parser(new StringReader(text));
    }

    /// <summary>The mapping at the top of the file, or null when there is none; then there is a finding.</summary>
    /// <param name="text">The file's text.</param>
    /// <param name="file">The file's name in places.</param>
    /// <param name="findings">Takes what is wrong.</param>
    public static YamlMapping? Read(string text, string file, FindingList findings)
    {
        var tree = new YamlTree(text, file, findings);
        try
        {
            return tree.Document();
        }
        catch (ReadingStopped)
        {
            return null;
        }
    }

    private YamlMapping? Document()
    {
        Next();
        Next();
        if (parser.Current is StreamEnd)
        {
            findings.Add(FileRules.EmptyFile.At(
                new Place(file, 0, 0), $"{file} holds nothing", "Start with: format: 1"));
            return null;
        }

        Next();
        var root = Node(0, out _);
        Next();
        Next();
        if (parser.Current is DocumentStart second)
        {
            findings.Add(FileRules.UnsupportedYaml.At(
                At(second.Start), $"A second document begins here", "One unit per file: move it to a file of its own, delete the --- line."));
        }

        if (root is YamlMapping mapping) return mapping;
        findings.Add(ShapeRules.WrongType.At(
            root.Place, $"The file must hold keys with values, found {root.Describe()}", "Start with: format: 1"));
        return null;
    }

    /// <summary>Reads the node whose first event is current; afterwards its last event is.</summary>
    private YamlNode Node(int depth, out int size)
    {
        var start = parser.Current!;
        var place = At(start.Start);
        if (++nodes > YamlLimits.Nodes)
            throw Stop(FileRules.FileTooBig.At(place, $"More than {YamlLimits.Nodes} values", "Is this a circuit file?"));
        if (start is AnchorAlias alias) return Aliased(alias, place, out size);
        if (depth >= YamlLimits.Depth)
        {
            throw Stop(FileRules.TooDeep.At(
                place, $"Nested deeper than {YamlLimits.Depth} levels", "Nothing in a circuit file nests so deep: look for brackets that are not closed."));
        }

        // The parser lets some slips through, a colon without a key among them, and then its events do not pair up.
        if (start is not NodeEvent begin)
            throw Stop(FileRules.NotYaml.At(place, $"A key or a value is missing before this", "Look for a colon or a dash that stands alone."));
        CheckTag(begin, place);
        size = 1;
        YamlNode node = begin switch
        {
            Scalar scalar => Value(scalar, place),
            SequenceStart sequence => List(sequence, place, depth, ref size),
            _ => Mapping((MappingStart)begin, place, depth, ref size),
        };
        if (!begin.Anchor.IsEmpty) anchors[begin.Anchor.Value] = (node, size);
        return node;
    }

    private YamlScalar Value(Scalar scalar, Place place)
    {
        if (scalar.Value.Length > YamlLimits.Characters)
            throw Stop(FileRules.FileTooBig.At(place, $"A value of more than {YamlLimits.Characters} characters", "Is this a circuit file? Is a quote or a bracket not closed?"));
        if (HiddenCharacters.First(scalar.Value) is { } hidden)
        {
            findings.Add(FileRules.UnsupportedYaml.At(
                place, $"A value holds the unprintable character U+{((int)hidden).ToString("X4", CultureInfo.InvariantCulture)}", "Delete it: it would garble reports."));
        }

        var node = new YamlScalar(scalar.Value, scalar.Style == ScalarStyle.Plain, place);
        if (!node.IsNull || UnquotedDrill.After(text, (int)scalar.Start.Index) is not { } drill) return node;
        findings.Add(FileRules.UnquotedDrill.At(place, UnquotedDrill.Message(drill), UnquotedDrill.Help(drill)));
        return new YamlScalar($"#{drill}", plain: false, place);
    }

    private YamlSequence List(SequenceStart start, Place place, int depth, ref int size)
    {
        var flow = start.Style == SequenceStyle.Flow;
        if (flow) openBrackets.Add(place);
        var items = ImmutableArray.CreateBuilder<YamlNode>();
        for (Next(); parser.Current is not SequenceEnd; Next())
        {
            items.Add(Node(depth + 1, out var itemSize));
            size += itemSize;
        }

        if (flow) openBrackets.RemoveAt(openBrackets.Count - 1);
        return new YamlSequence(items.DrainToImmutable(), place);
    }

    private YamlMapping Mapping(MappingStart start, Place place, int depth, ref int size)
    {
        var flow = start.Style == MappingStyle.Flow;
        if (flow) openBrackets.Add(place);
        var entries = ImmutableArray.CreateBuilder<YamlEntry>();
        var seen = new Dictionary<string, Place>(StringComparer.Ordinal);
        for (Next(); parser.Current is not MappingEnd; Next())
        {
            var key = Node(depth + 1, out var keySize);
            Next();
            var value = Node(depth + 1, out var valueSize);
            size += keySize + valueSize;
            if (key is not YamlScalar name)
            {
                findings.Add(FileRules.UnsupportedYaml.At(key.Place, $"A key must be a word, found {key.Describe()}", "Write a name before the colon."));
                continue;
            }

            if (flow && DecimalComma.Rejoined(entries, name, value) is { } whole)
            {
                entries[^1] = new YamlEntry(entries[^1].Key, whole);
                continue;
            }

            if (seen.TryAdd(name.Text, name.Place))
            {
                entries.Add(new(name, value));
                continue;
            }

            var first = seen[name.Text];
            findings.Add(ShapeRules.DuplicateKey.At(
                name.Place, $"Key {Quote.Text(name.Text)} stands here and in line {first.Line}", "Keep one of them, or rename one.")
                with
            { Related = [new(first, $"the first one")] });
        }

        if (flow) openBrackets.RemoveAt(openBrackets.Count - 1);
        return new YamlMapping(entries.DrainToImmutable(), place);
    }

    private YamlNode Aliased(AnchorAlias alias, Place place, out int size)
    {
        if (!anchors.TryGetValue(alias.Value.Value, out var anchor))
        {
            throw Stop(FileRules.NotYaml.At(
                place, $"Alias *{alias.Value.Value} has no anchor &{alias.Value.Value} before it, or stands inside it", "Write the value out."));
        }

        size = anchor.Size;
        aliasNodes += size;
        if (aliasNodes > YamlLimits.AliasNodes)
        {
            throw Stop(FileRules.TooManyAliases.At(
                place, $"Aliases add more than {YamlLimits.AliasNodes} values to this file", "Write values out, or use based-on."));
        }

        return anchor.Node;
    }

    private void CheckTag(NodeEvent node, Place place)
    {
        if (!node.Tag.IsEmpty && node.Tag.Value is not "!")
        {
            findings.Add(FileRules.UnsupportedYaml.At(
                place, $"Tag {Quote.Text(node.Tag.Value)} has no meaning here", "Delete the tag: every value is plain text."));
        }
    }

    private void Next()
    {
        try
        {
            parser.MoveNext();
        }
        catch (YamlException fault)
        {
            throw Stop(Fault(fault.Start, fault.Message));
        }
        catch (InvalidOperationException)
        {
            // The parser's own answer to some unclosed brackets.
            throw Stop(Fault(parser.Current?.End ?? Mark.Empty, ""));
        }
    }

    private Finding Fault(Mark mark, string message) =>
        new SyntaxFault(text, file).Finding(At(mark), message, openBrackets.Count > 0 ? openBrackets[0] : null);

    private Place At(Mark mark)
    {
        // At the end of a text whose last line has no end, the parser counts a line that is not there.
        var beyond = mark is { Column: 1, Line: > 1 } && mark.Index >= text.Length && text is [.., not ('\n' or '\r' or '\u0085' or '\u2028' or '\u2029')];
        return beyond ? new Place(file, (int)mark.Line - 1, 0) : new Place(file, (int)mark.Line, (int)mark.Column);
    }

    private ReadingStopped Stop(Finding finding)
    {
        findings.Add(finding);
        return new ReadingStopped();
    }
}
