using Circuits.Findings;
using CsCheck;
using Xunit;

namespace Circuits.Tests.Reading;

public sealed class DidYouMeanTests
{
    [Theory]
    [InlineData("", "", 0)]
    [InlineData("line", "line", 0)]
    [InlineData("line", "", 4)]
    [InlineData("lube", "lub", 1)]
    [InlineData("lube", "lubed", 1)]
    [InlineData("lube", "lune", 1)]
    [InlineData("lube", "lbue", 1)]
    [InlineData("kitten", "sitting", 3)] // The textbook example of edit distance.
    [InlineData("ca", "abc", 3)] // Restricted form: 3, where the unrestricted distance is 2.
    public void Slips_are_counted(string left, string right, int slips)
    {
        Assert.Equal(slips, DidYouMean.Distance(left, right));
        Assert.Equal(slips, DidYouMean.Distance(right, left));
    }

    [Theory]
    [InlineData("diametre", "diameter")]
    [InlineData("Diameter", "diameter")]
    [InlineData("seat", "seats")]
    [InlineData("inn", "in")]
    [InlineData("colour", null)]
    [InlineData("x", null)]
    [InlineData("", null)]
    public void The_closest_word_is_offered(string word, string? meant) => Assert.Equal(meant, DidYouMean.Find(word, ["in", "seats", "diameter"]));

    [Fact]
    public void The_first_of_equally_close_words_is_offered() => Assert.Equal("line-1", DidYouMean.Find("line-3", ["line-1", "line-2"]));

    [Fact]
    public void A_word_less_one_letter_is_at_distance_one()
    {
        Gen.Select(Gen.String[Gen.Char['a', 'e'], 1, 12], Gen.Int[0, 1000]).Sample((word, at) =>
        {
            Assert.Equal(1, DidYouMean.Distance(word, word.Remove(at % word.Length, 1)));
        }, iter: 500);
    }

    [Fact]
    public void A_word_beyond_reason_is_not_compared()
    {
        var name = new string('a', 100_000);
        Assert.Null(DidYouMean.Find(name, [name[1..]]));
    }
}
