using Circuits.Findings;
using Circuits.Rendering;
using Xunit;

namespace Circuits.Tests.Rendering;

public class AnnotationTests
{
    [Fact]
    public void A_line_for_each_finding_beside_the_line_it_speaks_of() => Assert.Equal(
        "::error file=sample.yaml,line=41,col=9,title=lost-supply::direct is not applied in R: its oil stops at plate@22 (54 of 772 kPa left) "
        + "[body=2, plate=1, gear R]%0AFit plate 2.%0Aparts/plate.yaml:7:3: the clutch\n"
        + "::notice file=sample.yaml,line=12,title=assumed-size::assumed 40 mm2 for valve body.select: no area given\n"
        + "::error file=bad.yaml,line=3,col=1,title=not-yaml::a bracket is not closed\n",
        Text(FormSamples.Report(FormSamples.Lost(), FormSamples.Note()), FormSamples.Unread()));

    [Fact]
    public void Nothing_found_is_no_line() => Assert.Equal("", Text(FormSamples.Report()));

    // The command syntax as forges document it: %, CR and LF are escaped everywhere, colon and comma in properties as well.
    [Fact]
    public void What_would_end_the_command_is_escaped()
    {
        var finding = new Finding("r", Severity.Warning, Phrase.Of($"100 %: a,b\n::error::x"), new Place("a,b:c%.yaml", 1, 2));
        Assert.Equal("::warning file=a%2Cb%3Ac%25.yaml,line=1,col=2,title=r::100 %25: a,b\\u000A::error::x\n", Text(FormSamples.Report(finding)));
    }

    [Fact]
    public void A_file_is_named_from_the_root_also_when_it_was_named_otherwise()
    {
        var finding = FormSamples.Note() with { Place = new Place("/shop/units/./deep/../deep/x.yaml", 1, 0) };
        Assert.StartsWith("::notice file=deep/x.yaml,line=1,", Text(FormSamples.Report(finding)));
        Assert.StartsWith("::notice file=/shop/x.yaml,line=1,", Text(FormSamples.Report(finding with { Place = new Place("../x.yaml", 1, 0) })));
    }

    private static string Text(params FindingReport[] reports) => FindingForms.Of(OutputFormat.Annotations, reports, FormSamples.Context);
}
