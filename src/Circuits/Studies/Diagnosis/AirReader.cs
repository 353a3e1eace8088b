using System.Collections.Immutable;
using Circuits.Findings;
using Circuits.Model;
using Circuits.Studies.AirCheck;
using Circuits.Studies.Faults;

namespace Circuits.Studies.Diagnosis;

/// <summary>Understands what was noticed when air was let in: <c>high=high moves; no hiss: body.second by the manual valve</c>, in the words of the sheet.</summary>
public sealed class AirReader
{
    private const string Form = "Write port=what was noticed: high=high moves; high=hiss: clutch high; high=as it should.";
    private const string Thud = ", with a dull thud";

    private readonly Assembly assembly;
    private readonly Lazy<ImmutableArray<Fault>> faults;
    private readonly Dictionary<string, AirPredictions> byLever = [];

    /// <summary>A reader for one assembly.</summary>
    /// <param name="assembly">The assembly as it should be.</param>
    public AirReader(Assembly assembly)
    {
        this.assembly = assembly;
        faults = new Lazy<ImmutableArray<Fault>>(() => FaultLibrary.Of(assembly));
    }

    /// <summary>Reads what was noticed at one port; several things go with semicolons, and each is a piece of evidence.</summary>
    /// <param name="text">Port and what was noticed; with the lever elsewhere than in neutral, <c>high,R=high moves</c>.</param>
    public ImmutableArray<EvidenceReading> Read(string text)
    {
        var equals = text.IndexOf('=', StringComparison.Ordinal);
        if (equals < 0) return [Wrong(text, "is not understood", Form)];
        var where = text[..equals].Split(',', StringSplitOptions.TrimEntries);
        var positions = assembly.Revisions.SelectMany(revision => revision.Lever).Select(position => position.Name).Distinct().ToImmutableArray();
        if (where.Length > 2 || (where.Length == 2 && !positions.Contains(where[1])))
            return [Wrong(text, $"there is no lever position '{string.Join(',', where[1..])}'", Known(where[^1], positions, "lever position"))];
        var predictions = At(where.Length == 2 ? where[1] : null);
        var port = Find(predictions.Ports, where[0]);
        if (port < 0) return [Wrong(text, $"air cannot be let in at '{where[0]}'", Known(where[0], [.. predictions.Ports.Select(known => known.Name)], "port"))];
        var told = text[(equals + 1)..].Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
        return told.Length == 0 ? [Wrong(text, "does not say what was noticed", Form)] : [.. told.Select(words => One(text[..equals].Trim(), where.Length == 2, words, predictions, port))];
    }

    private AirPredictions At(string? lever)
    {
        var key = lever ?? AirBench.NeutralOf(assembly.Unit) ?? "";
        return byLever.TryGetValue(key, out var known) ? known : byLever[key] = new AirPredictions(assembly, lever);
    }

    /// <summary>A port by its name, or as the sheet writes it: <c>gauge port high</c>, <c>case.direct at deck 12</c>; -1 for none.</summary>
    private static int Find(ImmutableArray<AirPort> ports, string text)
    {
        for (var i = 0; i < ports.Length; i++)
        {
            if (ports[i].Name == text || AirWords.Of(ports[i]) == text || (ports[i].Kind == AirPortKind.Face && $"{ports[i].Passage} at {ports[i].Joint}" == text)) return i;
        }

        return -1;
    }

    private EvidenceReading One(string portText, bool namesLever, string told, AirPredictions predictions, int port)
    {
        var text = $"{portText}={told}";
        var words = (told.EndsWith(Thud, StringComparison.OrdinalIgnoreCase) ? told[..^Thud.Length] : told).Replace("doesn't", "does not", StringComparison.OrdinalIgnoreCase);
        switch (words.ToLowerInvariant())
        {
            case AirWords.AsItShould or "as it should be" or "right" or "ok" or "fine": return Of(AirNotice.AsItShould, null, AirWords.Right);
            case "no clutch moves" or "nothing moves": return Of(AirNotice.NoneMoves, null, Phrase.Of($"no clutch moves"));
            case "no other clutch moves": return Of(AirNotice.NoOtherMoves, null, Phrase.Of($"no other clutch moves"));
            case "no hiss": return Of(AirNotice.NoneHisses, null, Phrase.Of($"no hiss"));
            case "no hiss elsewhere": return Of(AirNotice.NoOtherHisses, null, Phrase.Of($"no hiss but where it should be"));
        }

        // What begins with more words is tried first.
        foreach (var (start, notice) in ((string, AirNotice)[])[("no hiss", AirNotice.Silent), ("hiss, as it should", AirNotice.Hisses), ("hisses", AirNotice.Hisses), ("hiss", AirNotice.Hisses)])
        {
            if (words.StartsWith(start, StringComparison.OrdinalIgnoreCase)) return Hiss(notice, words[start.Length..]);
        }

        foreach (var (some, notice) in ((string, AirNotice)[])[("does not move", AirNotice.Stays), ("stays", AirNotice.Stays), ("moves", AirNotice.Moves)])
        {
            if (words.StartsWith(some, StringComparison.OrdinalIgnoreCase)) return Clutch(notice, words[some.Length..].Trim());
            if (words.EndsWith(" " + some, StringComparison.OrdinalIgnoreCase)) return Clutch(notice, words[..^some.Length].Trim());
        }

        return Wrong(text, $"'{told}' is not understood", "Known: CLUTCH moves; CLUTCH does not move; no clutch moves; hiss: PLACE; no hiss: PLACE; no hiss; as it should.");

        EvidenceReading Of(AirNotice notice, string? at, Phrase meaning) => EvidenceReading.Of(new AirEvidence(
            text, Phrase.Of($"air at {AirWords.Of(predictions.Ports[port])}{(namesLever ? Phrase.Of($", lever in {predictions.Lever}") : null)}: {meaning}"), predictions, port, notice, at));

        EvidenceReading Clutch(AirNotice notice, string clutch)
        {
            var clutches = assembly.Unit.Clutches.Select(known => known.Name).ToImmutableArray();
            if (clutch.Length == 0)
            {
                var moving = predictions.Right[port].Clutches.Where(known => known.Value == AirMove.Moves).Select(known => known.Key).ToList();
                if (moving.Count != 1) return Wrong(text, "does not say which clutch", Known("", clutches, "clutch"));
                clutch = moving[0];
            }

            clutch = clutches.FirstOrDefault(known => known.Equals(clutch, StringComparison.OrdinalIgnoreCase)) ?? clutch;
            return clutches.Contains(clutch)
                ? Of(notice, clutch, Phrase.Of($"{new AirSign(notice == AirNotice.Moves ? AirSignKind.Moves : AirSignKind.Stays, clutch)}"))
                : Wrong(text, $"there is no clutch '{clutch}'", Known(clutch, clutches, "clutch"));
        }

        EvidenceReading Hiss(AirNotice notice, string rest)
        {
            var place = rest.TrimStart(':', ' ');
            if (place.StartsWith("at ", StringComparison.OrdinalIgnoreCase)) place = place[3..].Trim();
            var places = Places(predictions, port);
            if (place.Length == 0) return Wrong(text, "does not say where it hisses", Known("", places, "place"));
            return places.Contains(place)
                ? Of(notice, place, Phrase.Of($"{new AirSign(notice == AirNotice.Hisses ? AirSignKind.Hisses : AirSignKind.Silent, place)}"))
                : Wrong(text, $"no fault lets air out at '{place}' there", Known(place, places, "place"));
        }
    }

    /// <summary>Where air may come out when it is let in at a port: as it should, or with any single fault; first what is likeliest heard.</summary>
    private ImmutableArray<string> Places(AirPredictions predictions, int port) =>
    [
        .. predictions.Right[port].Hisses.Concat(faults.Value.SelectMany(fault => predictions.At([fault], port).Hisses))
            .OrderByDescending(hiss => hiss.Heard).Select(hiss => hiss.At).Distinct(),
    ];

    private static EvidenceReading Wrong(string text, string problem, string help) => EvidenceReading.Wrong($"air '{text}': {problem}", help);

    private static string Known(string word, ImmutableArray<string> known, string what) => EvidenceReader.Help(word, known, what);
}
