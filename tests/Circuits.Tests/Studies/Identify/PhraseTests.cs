using Xunit;

namespace Circuits.Tests.Studies.Identify;

/// <summary>What is typed in is understood, or refused with what would have been.</summary>
public class PhraseTests
{
    private static readonly Bench It = Bench.Of(
        """
        joints: {face: {between: [body, housing], sheets: [plate]}}
        parts:
          body:
            kind: casting
            revisions:
              1: {passages: {a: {face: [5, 6]}, either: {face: [7, 11]}, b: {face: [22, 23]}}, balls: {two-way: {in: either, seats: [7, 11], diameter: 6 mm}}}
              2: {passages: {a: {face: 5}, c: {face: 6}, either: {face: [7, 11]}, b: {face: 22}}, marks: ["cast letter B, on the rim", rib between locations 5 and 6]}
          housing: {kind: casting, passages: {a: {face: [5, 6, 7]}, b: {face: [11, 22, 23]}}}
          plate:
            kind: sheet
            revisions:
              1: {openings: [{at: 7, hole: 2 mm, cup: true}, {at: 11, hole: 2 mm}]}
              2: {openings: [{at: [22, 23], slot: 3 x 10 mm}, {at: 11, hole: 3 mm}, {at: 11, hole: 3 mm}]}
        """);

    [Theory]
    [InlineData("hole at 7", "plate: hole at 7")]
    [InlineData("Hole at location 7.", "plate: hole at 7")]
    [InlineData("a hole at 7", "plate: hole at 7")]
    [InlineData("no hole at 7", "plate: no hole at 7")]
    [InlineData("plate: metal at 7", "plate: no opening at 7")]
    [InlineData("blank at 7", "plate: no opening at 7")]
    [InlineData("plain metal at location 7", "plate: no opening at 7")]
    [InlineData("cup at 7", "plate: cup at 7")]
    [InlineData("slot at 22-23", "plate: slot at 22-23")]
    [InlineData("slot at 23-22", "plate: slot at 22-23")]
    [InlineData("slot from 22 to 23", "plate: slot at 22-23")]
    [InlineData("slot between 22 and 23", "plate: slot at 22-23")]
    [InlineData("slot at locations 22 and 23", "plate: slot at 22-23")]
    [InlineData("slot at 22\u201323", "plate: slot at 22-23")]
    [InlineData("slot at 22", "plate: slot at 22-23")]
    [InlineData("plate: slot at 22-23", "plate: slot at 22-23")]
    [InlineData("plate slot at 22-23", "plate: slot at 22-23")]
    [InlineData("plate@22-23", "plate: opening at 22-23")]
    [InlineData("two holes at 11", "plate: 2 holes at 11")]
    [InlineData("rib between 5 and 6", "body: rib between 5 and 6")]
    [InlineData("rib between 6 and 5", "body: rib between 5 and 6")]
    [InlineData("wall between 5 and 6", "body: rib between 5 and 6")]
    [InlineData("no rib at 5-6", "body: no rib between 5 and 6")]
    [InlineData("body: track from 7 to 11", "body: track from 7 to 11")]
    [InlineData("body: passage at 23 (b)", "body: passage at 23")]
    [InlineData("body: pocket at 23", "body: passage at 23")]
    [InlineData("body: solid metal at 23", "body: no passage at 23")]
    [InlineData("body: hole at 23", "body: passage at 23")]
    [InlineData("ball in either", "body: ball in either")]
    [InlineData("two-way ball in either", "body: ball in either")]
    [InlineData("ball two-way", "body: ball in either")]
    [InlineData("\"cast letter B, on the rim\"", "body: \"cast letter B, on the rim\"")]
    [InlineData("Cast  letter b, on the rim", "body: \"cast letter B, on the rim\"")]
    [InlineData("no cast letter B, on the rim", "body: no \"cast letter B, on the rim\"")]
    [InlineData("rib between locations 5 and 6", "body: rib between 5 and 6")]
    public void A_phrase_is_understood(string phrase, string meaning)
    {
        var told = It.Told("seen " + phrase);
        Assert.Equal(meaning, $"{told.Part}: {told.Meaning.Words()}");
    }

    [Theory]
    [InlineData("7=2 mm", "plate: hole at 7: 2 mm")]
    [InlineData("plate@7=2mm", "plate: hole at 7: 2 mm")]
    [InlineData("cup at 7=2mm", "plate: hole at 7: 2 mm")]
    [InlineData("hole at 7 = 0.083 in", "plate: hole at 7: 2.11 mm")]
    [InlineData("7=5/64 in", "plate: hole at 7: 1.98 mm")]
    [InlineData("7=#45", "plate: hole at 7: 2.08 mm")]
    [InlineData("22-23=10x3 mm", "plate: slot at 22-23: 3 x 10 mm")]
    [InlineData("plate@22-23=3 mm", "plate: slot at 22-23: 3 mm")]
    [InlineData("5=2 mm", "plate: hole at 5: 2 mm")]
    [InlineData("ball in either=6 mm", "body: ball in either: 6 mm")]
    public void A_measurement_is_understood(string measured, string meaning)
    {
        var told = It.Told("measured " + measured);
        Assert.Equal(meaning, $"{told.Part}: {told.Meaning.Words()}");
    }

    [Theory]
    [InlineData("seen slit at 22-23", "nothing known is called 'slit at 22-23'", "Did you mean: slot at 22-23? Known: body: passage at 23; rib between 5 and 6;")]
    [InlineData("seen ", "nothing known is called ''", "Known: ")]
    [InlineData("seen the moon", "nothing known is called 'the moon'", "Known: ")]
    [InlineData("seen hole at 99", "'hole at 99': plate has no location '99'", "Known: ")]
    [InlineData("seen rib between 5 and 99", "'rib between 5 and 99': body has no location '99'; housing has no location '99'", "Known: ")]
    [InlineData("seen rib between 5 and 5", "'rib between 5 and 5': it takes two locations", "Known: ")]
    [InlineData("seen plain metal at 5-6", "'plain metal at 5-6': name one location of metal at a time", "Known: ")]
    [InlineData("seen passage at 5", "'passage at 5' fits several parts", "Say which: body: passage at 5; or housing: passage at 5.")]
    [InlineData("seen rib between 7 and 22", "'rib between 7 and 22' fits several parts", "Say which: body: rib between 7 and 22; or housing: rib between 7 and 22.")]
    [InlineData("seen metal at 7", "'metal at 7' fits several parts", "Say which: body: metal at 7; or housing: metal at 7; or plate: metal at 7.")]
    [InlineData("measured 7", "measured '7' has no size", "Write what was measured, =, and the size: 21=5.0mm")]
    [InlineData("measured 7=", "measured '7=': the size is missing", "A size is ")]
    [InlineData("measured 7=2", "measured '7=2': '2' has no unit: write 2 mm, or in", "A size is ")]
    [InlineData("measured 7=2,1 mm", "measured '7=2,1 mm': '2,1 mm': write the decimal point as a point", "A size is ")]
    [InlineData("measured 7=0 mm", "measured '7=0 mm': '0 mm' is not more than 0", "A size is ")]
    [InlineData("measured 7=-1 mm", "measured '7=-1 mm': '-1 mm' is not more than 0", "A size is ")]
    [InlineData("measured 7=1/0 in", "measured '7=1/0 in': '1/0 in' is not a size", "A size is ")]
    [InlineData("measured 7=#99", "measured '7=#99': '#99': there is no such number drill; they go from #1 to #80", "A size is ")]
    [InlineData("measured 7=2 kPa", "measured '7=2 kPa': '2 kPa' is not a length; write mm or in", "A size is ")]
    [InlineData("measured 7=2 furlong", "measured '7=2 furlong': '2 furlong': unknown unit 'furlong'; write mm or in", "A size is ")]
    [InlineData("measured 7=1x2x3 mm", "measured '7=1x2x3 mm': '1x2x3 mm' is not a size", "A size is ")]
    [InlineData("measured rib between 5 and 6=2 mm", "'rib between 5 and 6': rib between 5 and 6 has no size that is measured", "Known: ")]
    [InlineData("measured no hole at 7=2 mm", "'no hole at 7': what is not there has no size", "Known: ")]
    public void What_is_not_understood_is_refused_with_help(string told, string problem, string help)
    {
        var reading = It.Read(told);
        Assert.Null(reading.Observation);
        Assert.Equal(problem, reading.Problem);
        Assert.StartsWith(help, reading.Help, StringComparison.Ordinal);
    }
}
