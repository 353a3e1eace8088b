using System.Collections.Immutable;
using System.CommandLine;
using System.Globalization;
using Circuits.Model;
using Circuits.Reading;
using Circuits.Studies.Spread;

namespace Circuits.Cli;

/// <summary>The options that ask how far results spread within the tolerances of sizes.</summary>
internal sealed class SpreadOptions
{
    private const int Most = 100_000;

    private readonly Option<string?> spread = new("--spread")
    {
        HelpName = "samples",
        Description = "Draw so many units within the tolerances of their sizes (2.10 +- 0.05 mm) and show where nine tenths of the results lie: 200, say.",
    };

    private readonly Option<string?> seed = new("--seed") { HelpName = "number", Description = "Which units --spread draws; 1 unless given. The same number draws the same." };

    /// <summary>Both options, in the order of the help page.</summary>
    public IEnumerable<Option> All => [spread, seed];

    /// <summary>What was asked for; null when nothing was.</summary>
    /// <exception cref="UserError">Something about it is wrong.</exception>
    public SpreadRequest? Read(Session session)
    {
        var which = 1UL;
        if (session.Parsed.GetValue(seed) is { } number && !ulong.TryParse(number, NumberStyles.None, CultureInfo.InvariantCulture, out which))
            throw new UserError(UserError.Usage, $"--seed {number} is not a whole number, 0 or more");
        if (session.Parsed.GetValue(spread) is not { } word) return null;
        return int.TryParse(word, NumberStyles.None, CultureInfo.InvariantCulture, out var count) && count is >= 2 and <= Most
            ? new SpreadRequest(count, which)
            : throw new UserError(UserError.Usage, string.Create(CultureInfo.InvariantCulture, $"--spread {word} is not a number of samples from 2 to {Most}"), "Write --spread 200.");
    }

    /// <summary>Asks every sample of a file's unit.</summary>
    /// <param name="session">The session; Ctrl-C breaks off.</param>
    /// <param name="file">The file.</param>
    /// <param name="request">How many samples, and which.</param>
    /// <param name="ask">What is asked of each.</param>
    /// <returns>The answers, and how many sizes carry a tolerance.</returns>
    /// <exception cref="UserError">The file can no longer be read.</exception>
    public static (ImmutableArray<T> Answers, int Sizes) Ask<T>(Session session, string file, SpreadRequest request, Func<Unit, T> ask)
        where T : class
    {
        var sizes = 0;
        CircuitReader.ReadFile(file, draw: (_, _) =>
        {
            sizes++;
            return 0;
        }, files: session.Inputs);
        var answers = SpreadSample.Ask(request, draw => CircuitReader.ReadFile(file, draw: draw, files: session.Inputs).Unit, ask, session.Interrupted);
        return answers.Length == request.Count ? (answers, sizes) : throw new UserError(UserError.Usage, $"{file} changed while it was read again and again");
    }
}
