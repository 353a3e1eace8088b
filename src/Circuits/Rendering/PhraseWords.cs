using System.Globalization;
using System.Text;
using Circuits.Findings;
using Circuits.Judging;
using Circuits.Quantities;
using Circuits.Studies.AirCheck;

namespace Circuits.Rendering;

/// <summary>Makes words of phrases: the one place that does.</summary>
public static class PhraseWords
{
    /// <summary>The sentence.</summary>
    /// <param name="phrase">What to say.</param>
    /// <param name="units">The units of its quantities.</param>
    /// <param name="gearIsTold">Whether the gear that it was found in is left out, since a heading names it.</param>
    public static string Of(Phrase phrase, UnitSystem units = UnitSystem.Si, bool gearIsTold = false)
    {
        var writer = new Writer(units, gearIsTold);
        phrase.Tell(writer);
        return writer.ToString();
    }

    private sealed class Writer(UnitSystem units, bool gearIsTold) : IPhraseWriter
    {
        private readonly StringBuilder text = new();

        public override string ToString() => text.ToString();

        public void Wording(string text) => this.text.Append(text);

        public void Name(string name) => text.Append(name);

        public void Count(int count) => text.Append(CultureInfo.InvariantCulture, $"{count}");

        public void Quantity(Quantity quantity, bool bare) =>
            text.Append(bare ? Measures.Number(quantity, units) : Measures.Of(quantity, units));

        public void Gear(GearMention gear)
        {
            if (gearIsTold) return;
            text.Append(gear.Form switch
            {
                GearForm.In => $" in {gear.Gear}",
                GearForm.AtEnd => $", in {gear.Gear}",
                GearForm.Before => $"{gear.Gear}: ",
                _ => $"{gear.Gear} ",
            });
        }

        public void Place(Place place) => text.Append(place.ToString());

        public void Worded(IWorded fact) => text.Append(fact switch
        {
            Feel feel => FeelWords.Of(feel),
            AirSign sign => AirSignWords.Of(sign),
            Stand stand => StandWords.Of(stand, units),
            _ => throw new ArgumentException($"no words for {fact.GetType().Name}", nameof(fact)),
        });
    }
}
