namespace Circuits.Findings;

/// <summary>A rule: its stable name, and what someone who meets it needs to know.</summary>
/// <param name="Name">The name in plain words, <c>lost-supply</c>; part of the contract.</param>
/// <param name="Severity">How grave its findings are.</param>
/// <param name="Meaning">What a finding of this rule says.</param>
/// <param name="OnTheRoad">Why it matters: what the driver or the next technician meets.</param>
/// <param name="Example">A case, in a few lines.</param>
/// <param name="Mend">What to do.</param>
public sealed record Rule(
    string Name, Severity Severity, string Meaning, string OnTheRoad, string Example, string Mend)
{
    /// <summary>A finding of this rule.</summary>
    /// <param name="place">The most specific place.</param>
    /// <param name="message">One terse sentence that names the element.</param>
    /// <param name="help">What to do in this case, or null.</param>
    public Finding At(Place place, PhraseBuilder message, string? help = null) => At(place, message.ToPhrase(), help);

    /// <summary>A finding of this rule.</summary>
    /// <param name="place">The most specific place.</param>
    /// <param name="message">One terse sentence that names the element.</param>
    /// <param name="help">What to do in this case, or null.</param>
    public Finding At(Place place, Phrase message, string? help = null) => new(Name, Severity, message, place) { Help = help };
}
