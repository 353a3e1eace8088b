using Circuits.Findings;
using Circuits.Judging;
using Circuits.Networks;
using Circuits.Rendering;

namespace Circuits.Tests;

/// <summary>What a reader is told, in SI units.</summary>
internal static class Told
{
    public static string Words(this Phrase phrase) => PhraseWords.Of(phrase);

    public static string Words(this Finding finding) => PhraseWords.Of(finding.Message);

    public static string Words(this Assumption assumption) => PhraseWords.Of(assumption.Text);

    public static string Words(this Feel feel) => FeelWords.Of(feel);

    public static string Words(this Stand stand) => StandWords.Of(stand);
}
