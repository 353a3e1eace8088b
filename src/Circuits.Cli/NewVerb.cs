using System.CommandLine;
using Circuits.Reading;

namespace Circuits.Cli;

/// <summary><c>new</c>: a small circuit file to start from.</summary>
internal static class NewVerb
{
    public static Verb Create()
    {
        var file = new Argument<string?>("FILE")
        {
            Arity = ArgumentArity.ZeroOrOne,
            Description = "The file to write; without it, the text goes to standard output.",
        };
        var force = new Option<bool>("--force") { Description = "Overwrite an existing file." };
        return new Verb(
            "new", "Writes a small, valid, commented circuit file to start from. Its data is invented.",
            [file, force],
            ["circuits new my-unit.yaml"],
            session => Run(session, session.Parsed.GetValue(file), session.Parsed.GetValue(force)));
    }

    private static int Run(Session session, string? file, bool force)
    {
        if (file is null)
        {
            session.Finish(Text());
            return ExitCode.Fine;
        }

        if (!force && FileStatus.Of(file).Kind is not (FileKind.Missing or FileKind.Unknown or FileKind.Folder))
            throw new UserError(UserError.Output, $"{file} exists already", "Name another file, or give --force to overwrite it.");
        session.WriteFile(file, Text());
        session.Commit();
        session.Tell($"wrote {file}; next: circuits check {file}");
        return ExitCode.Fine;
    }

    private static string Text()
    {
        using var stream = typeof(NewVerb).Assembly.GetManifestResourceStream("starter.yaml")
            ?? throw new InvalidOperationException("The starter file is not embedded.");
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
