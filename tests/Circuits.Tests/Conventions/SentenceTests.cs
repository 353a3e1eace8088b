using System.Runtime.CompilerServices;
using Circuits.Findings;
using Circuits.Rendering;
using Mono.Cecil.Cil;
using Mono.Cecil;
using Xunit;

namespace Circuits.Tests.Conventions;

/// <summary>
/// Messages are data to the last floor: words are made by the renderer and nothing looks at them. Read from the compiled code.
/// </summary>
public class SentenceTests
{
    private static readonly List<Call> Calls = [.. CallsOf(typeof(Phrase)), .. CallsOf(typeof(Circuits.Cli.CommandLine))];

    /// <summary>What has words that the renderer makes.</summary>
    private static readonly HashSet<string> Facts = [
        .. typeof(Phrase).Assembly.GetTypes().Where(type => type == typeof(Phrase) || typeof(IWorded).IsAssignableFrom(type)).Select(type => type.FullName!.Replace('+', '/'))];

    [Fact]
    public void Nothing_turns_a_phrase_into_text_but_the_renderer()
    {
        // What formats whatever it is given says "Circuits.Findings.Phrase" to the reader.
        var wrong = Calls.Where(call => call.Called is GenericInstanceMethod { Name: "AppendFormatted" or "Join" or "Concat" } generic
            && generic.DeclaringType.Name is "String" or nameof(DefaultInterpolatedStringHandler) or "AppendInterpolatedStringHandler"
            && generic.GenericArguments.Any(argument => Facts.Contains(argument.FullName)));
        Assert.Empty(Told(wrong));
        Assert.Empty(Told(Calls.Where(call => call.Called.Name == "ToString" && call.Method.Name is not ("PrintMembers" or "ToString") && (Facts.Contains(call.Called.DeclaringType.FullName) || Facts.Contains(call.Before)))));
    }

    [Fact]
    public void Only_the_renderer_is_told_a_phrase_piece_by_piece()
    {
        Assert.Empty(Told(Calls.Where(call => call.Called.Name == "Tell" && call.Called.DeclaringType.FullName == typeof(Phrase).FullName && Outer(call.Type).Name != nameof(PhraseWords))));
        Assert.Equal(
            [typeof(PhraseWords)],
            typeof(Phrase).Assembly.GetTypes().Where(type => type is { IsInterface: false } && type.GetInterface(nameof(IPhraseWriter)) is not null).Select(type => type.DeclaringType!));
    }

    /// <summary>What is found out is told as data: no report carries a sentence that is already made.</summary>
    [Fact]
    public void No_report_carries_a_sentence_that_is_already_made()
    {
        // A scale's own words, and what someone typed.
        string[] scales = ["SeverityStep.Meaning"];
        string[] sentences = ["Reason", "Why", "Message", "Meaning", "Sentence", "Fact", "Because", "Assumption"];
        var wrong =
            from type in typeof(Phrase).Assembly.GetTypes()
            where type.Namespace is { } name && (name.StartsWith("Circuits.Judging", StringComparison.Ordinal) || name.StartsWith("Circuits.Studies", StringComparison.Ordinal))
            from property in type.GetProperties()
            where property.PropertyType == typeof(string) && sentences.Contains(property.Name) && property.DeclaringType == type
            select $"{type.Name}.{property.Name}";
        Assert.Equal(scales, wrong);
    }

    /// <summary>Units are the renderer's business: a sentence with a unit in it was made too early.</summary>
    [Fact]
    public void No_wording_of_a_phrase_holds_a_unit()
    {
        var units = Circuits.Quantities.MeasureUnit.All.Select(unit => unit.Symbol).Where(symbol => symbol is not ("in" or "m" or "s" or "A" or "K" or "L" or "N")).ToHashSet();
        var wrong =
            from call in Calls
            where call.Called.Name == nameof(PhraseBuilder.AppendLiteral) && call.Called.DeclaringType.Name == nameof(PhraseBuilder) && call.Literal is not null
            where call.Literal!.Split(' ', ',', ';', ':', '.', ')', '(').Any(units.Contains)
            select $"{call.Type.FullName}.{call.Method.Name}: {call.Literal}";

        // The stiffness of the oil, of which no file and no gauge tells.
        Assert.Equal([], wrong.Where(text => !text.Contains(" MPa for the stiffness of the oil", StringComparison.Ordinal)));
    }

    /// <summary>What a shop writes in other units is written by <see cref="Measures"/>, so that no page has both.</summary>
    [Fact]
    public void Nothing_but_the_measures_writes_units_that_shops_write_otherwise()
    {
        // Words that files hold, or that someone types; the units themselves.
        string[] language = ["BenchText", "SizeReader", "DrillSizes", "ElementFaults", "HoleSizing", "Measures"];
        string[] units = ["mm", "mm2", "kPa", "N/mm", "Nm", "degC", "mL"];
        var wrong =
            from type in ModuleDefinition.ReadModule(typeof(Phrase).Assembly.Location).GetTypes()
            where Outer(type) is { Namespace: var space, Name: var outer } && Told(space) && !language.Contains(outer)
            from method in type.Methods
            where method.HasBody
            from instruction in method.Body.Instructions
            where instruction.Operand is string literal && Holds(literal)
            select $"{type.FullName}.{method.Name}: {instruction.Operand}";
        Assert.True(!wrong.Any(), string.Join('\n', wrong));

        // An example has its numbers with it; drawings and style sheets measure in mm, written next to the number.
        bool Holds(string literal)
        {
            var words = literal.Split(' ', ',', ';', ':', '.', ')', '(', '=');
            return Enumerable.Range(0, words.Length).Any(i => units.Contains(words[i]) && (i == 0 ? words[i] != "mm" : words[i - 1].Length == 0 || !char.IsAsciiDigit(words[i - 1][^1])));
        }

        static bool Told(string space) => space.StartsWith("Circuits.Judging", StringComparison.Ordinal) || space.StartsWith("Circuits.Studies", StringComparison.Ordinal)
            || space.StartsWith("Circuits.Rendering", StringComparison.Ordinal);
    }

    private static IEnumerable<string> Told(IEnumerable<Call> calls) =>
        calls.Select(call => $"{call.Type.FullName}.{call.Method.Name} calls {call.Called.Name} of {call.Called.DeclaringType.Name}").Distinct();

    private static TypeDefinition Outer(TypeDefinition type) => type.DeclaringType is { } outer ? Outer(outer) : type;

    private static IEnumerable<Call> CallsOf(Type known) =>
        from type in ModuleDefinition.ReadModule(known.Assembly.Location).GetTypes()
        from method in type.Methods
        where method.HasBody
        from instruction in method.Body.Instructions
        where instruction.Operand is MethodReference && (instruction.OpCode == OpCodes.Call || instruction.OpCode == OpCodes.Callvirt || instruction.OpCode == OpCodes.Newobj)
        select new Call(type, method, (MethodReference)instruction.Operand, Before(instruction), instruction.Previous?.Operand as string);

    /// <summary>What the call before this one gave, where nothing but loads and jumps stands between: what `a + "b"` turns into text.</summary>
    private static string Before(Instruction instruction)
    {
        for (var (at, steps) = (instruction.Previous, 0); at is not null && steps < 6; (at, steps) = (at.Previous, steps + 1))
        {
            if (at.Operand is MethodReference called) return called.ReturnType.FullName;
        }

        return "";
    }

    private sealed record Call(TypeDefinition Type, MethodDefinition Method, MethodReference Called, string Before, string? Literal);
}
