using System.Runtime.CompilerServices;
using Circuits.Quantities;

namespace Circuits.Findings;

/// <summary>Makes a phrase of an interpolated string. What it has no method for is no argument of a phrase.</summary>
[InterpolatedStringHandler]
public ref struct PhraseBuilder
{
    /// <summary>The format that leaves out a unit which follows with the next quantity: <c>{width:bare} x {length}</c>.</summary>
    public const string Bare = "bare";

    private readonly PhrasePart[] parts;
    private int count;
    private bool spread;

    /// <summary>Called by the compiler.</summary>
    /// <param name="literalLength">Characters of wording.</param>
    /// <param name="formattedCount">Arguments.</param>
    public PhraseBuilder(int literalLength, int formattedCount)
    {
        _ = literalLength;
        parts = new PhrasePart[(2 * formattedCount) + 1];
    }

    /// <summary>A piece of wording.</summary>
    /// <param name="text">The wording.</param>
    public void AppendLiteral(string text)
    {
        // Braces that are written double come as pieces of their own.
        if (count > 0 && parts[count - 1] is { Kind: PhraseKind.Wording } before) parts[count - 1] = PhrasePart.Of(PhraseKind.Wording, before.Value + text);
        else Add(PhrasePart.Of(PhraseKind.Wording, text));
    }

    /// <summary>A name, or words of the file; nothing when null.</summary>
    /// <param name="name">The name.</param>
    public void AppendFormatted(string? name)
    {
        if (!string.IsNullOrEmpty(name)) Add(PhrasePart.Of(PhraseKind.Name, name));
    }

    /// <summary>A letter of the file.</summary>
    /// <param name="letter">The letter.</param>
    public void AppendFormatted(char letter) => AppendFormatted(letter.ToString());

    /// <summary>Something by its name.</summary>
    /// <param name="named">The thing.</param>
    public void AppendFormatted(INamed named) => AppendFormatted(named.InWords);

    /// <summary>A count of things.</summary>
    /// <param name="number">The count.</param>
    public void AppendFormatted(int number) => Add(new PhrasePart(PhraseKind.Count, null, number));

    /// <summary>A quantity.</summary>
    /// <param name="quantity">The quantity.</param>
    /// <typeparam name="T">What kind of quantity.</typeparam>
    public void AppendFormatted<T>(T quantity)
        where T : struct, IQuantity => Add(PhrasePart.Of(quantity.Quantity, bare: false));

    /// <summary>A quantity of any kind.</summary>
    /// <param name="quantity">The quantity.</param>
    public void AppendFormatted(Quantity quantity) => Add(PhrasePart.Of(quantity, bare: false));

    /// <summary>A quantity whose unit follows with the next one.</summary>
    /// <param name="quantity">The quantity.</param>
    /// <param name="format"><see cref="Bare"/>; there is no other.</param>
    /// <typeparam name="T">What kind of quantity.</typeparam>
    /// <exception cref="FormatException">It is another format.</exception>
    public void AppendFormatted<T>(T quantity, string format)
        where T : struct, IQuantity
    {
        if (format != Bare) throw new FormatException($"quantities take no format but {Bare}: the renderer rounds them");
        Add(PhrasePart.Of(quantity.Quantity, bare: true));
    }

    /// <summary>The gear that it was found in.</summary>
    /// <param name="gear">The gear and how to mention it.</param>
    public void AppendFormatted(GearMention gear) => Add(new PhrasePart(PhraseKind.Gear, gear.Gear, (int)gear.Form));

    /// <summary>A place in a file.</summary>
    /// <param name="place">The place.</param>
    public void AppendFormatted(Place place) => Add(PhrasePart.Of(PhraseKind.Place, place));

    /// <summary>A fact for which the renderer has words.</summary>
    /// <param name="fact">The fact.</param>
    public void AppendFormatted(IWorded fact) => Add(PhrasePart.Of(PhraseKind.Worded, fact));

    /// <summary>A phrase within it; nothing when null.</summary>
    /// <param name="phrase">The phrase.</param>
    public void AppendFormatted(Phrase? phrase)
    {
        if (phrase is null || phrase.IsEmpty) return;
        Add(PhrasePart.Of(PhraseKind.Phrase, phrase));
        spread = true;
    }

    /// <summary>Names, a comma between them.</summary>
    /// <param name="names">The names.</param>
    public void AppendFormatted(IEnumerable<string> names) => AppendFormatted(Phrase.List(names));

    internal readonly Phrase ToPhrase()
    {
        if (count == 0) return Phrase.Empty;
        var all = parts.AsSpan(0, count);
        if (!spread) return new Phrase(count == parts.Length ? parts : all.ToArray());
        return Phrase.Join("", all.ToArray().Select(part => part.Value as Phrase ?? new Phrase([part])));
    }

    private void Add(PhrasePart part) => parts[count++] = part;
}
