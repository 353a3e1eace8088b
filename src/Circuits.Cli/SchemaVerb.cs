using System.Collections.Immutable;
using System.CommandLine;
using Circuits.Reading;
using Circuits.Rendering.Json;

namespace Circuits.Cli;

/// <summary><c>schema</c>: the JSON Schema of the language, or of a document that this program writes.</summary>
internal static class SchemaVerb
{
    private const string Changes = "changes";

    private static ImmutableArray<string> Names => [.. JsonSchemas.Names.Append(Changes).Order(StringComparer.Ordinal)];

    public static Verb Create(CommonOptions options)
    {
        var name = new Argument<string?>("NAME")
        {
            Arity = ArgumentArity.ZeroOrOne,
            Description = $"A verb, for the JSON it writes, or changes, for change sets: {string.Join(", ", Names)}. Without it: the language of circuit files.",
        };
        Completes.With(name, () => Names);
        return new Verb(
            "schema", "Prints the JSON Schema (draft 2020-12) of circuit files, or of a verb's JSON.",
            [name, options.Output],
            ["circuits schema -o circuit.schema.json", "circuits schema gears"],
            session => Run(session, session.Parsed.GetValue(name)));
    }

    private static int Run(Session session, string? name)
    {
        session.Finish(name switch
        {
            null => LanguageSchema.Text.TrimEnd() + "\n",
            Changes => LanguageSchema.ChangeSet,
            _ => JsonSchemas.Find(name) ?? throw UserError.Unknown("schema", name, Names),
        });
        return ExitCode.Fine;
    }
}
