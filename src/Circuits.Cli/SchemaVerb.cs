using System.CommandLine;
using Circuits.Reading;
using Circuits.Rendering;

namespace Circuits.Cli;

/// <summary><c>schema</c>: the JSON Schema of the language, or of a document that this program writes.</summary>
internal static class SchemaVerb
{
    public static Verb Create(CommonOptions options)
    {
        var name = new Argument<string?>("NAME")
        {
            Arity = ArgumentArity.ZeroOrOne,
            Description = $"A verb, for the JSON it writes, or changes, for change sets: {string.Join(", ", JsonSchemas.Names)}. Without it: the language of circuit files.",
        };
        Completes.With(name, () => JsonSchemas.Names);
        return new Verb(
            "schema", "Prints the JSON Schema (draft 2020-12) of circuit files, or of a verb's JSON.",
            [name, options.Output],
            ["circuits schema -o circuit.schema.json", "circuits schema gears"],
            session => Run(session, session.Parsed.GetValue(name)));
    }

    private static int Run(Session session, string? name)
    {
        session.Finish(name is null ? LanguageSchema.Text.TrimEnd() + "\n"
            : JsonSchemas.Find(name) ?? throw UserError.Unknown("schema", name, JsonSchemas.Names));
        return ExitCode.Fine;
    }
}
