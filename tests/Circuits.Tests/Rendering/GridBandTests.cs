using Circuits.Rendering;
using Xunit;

namespace Circuits.Tests.Rendering;

/// <summary>How columns are dealt out to bands, counted in cells.</summary>
public sealed class GridBandTests
{
    // Three columns of 10, 8 and 6 cells with gaps of 2; the last gap is not seen: 10 + 2 + 8 + 2 + 6 = 28.
    [Theory]
    [InlineData(28, "0 1 2")]
    [InlineData(27, "0 1|0 2")]
    [InlineData(20, "0 1|0 2")]
    public void Columns_that_just_fit_stand_side_by_side(int room, string bands)
    {
        var grid = Of(10, 8, 6);
        var found = grid.Bands(room, out var widths);
        Assert.Equal(bands, string.Join('|', found.Select(band => string.Join(' ', band))));
        Assert.All(widths.Zip([10, 8, 6]), pair => Assert.True(pair.First <= pair.Second));
    }

    // Half of 40 less a gap is 18, so that two such columns take 18 + 2 + 18 = 38 of it.
    [Fact]
    public void No_column_takes_more_than_half_of_the_room_less_its_gap()
    {
        var bands = Of(100, 100, 100).Bands(40, out var widths);
        Assert.Equal([18, 18, 18], widths);
        Assert.Equal(["0 1", "0 2"], bands.Select(band => string.Join(' ', band)));
    }

    [Fact]
    public void A_column_is_cut_only_where_the_table_is_too_wide()
    {
        Of(30, 8).Bands(40, out var widths);
        Assert.Equal([30, 8], widths);
        Of(31, 8).Bands(40, out widths);
        Assert.Equal([18, 8], widths);
    }

    // However small the room is, every band holds the first column and one more.
    [Fact]
    public void Every_band_gets_on()
    {
        var bands = Of(10, 8, 6).Bands(1, out var widths);
        Assert.Equal([1, 1, 1], widths);
        Assert.Equal(["0 1", "0 2"], bands.Select(band => string.Join(' ', band)));
    }

    private static Grid Of(params int[] cells)
    {
        var grid = new Grid();
        foreach (var count in cells) grid.AddColumn(new GridColumn([new string('x', count)], "", Right: false, Wrap: false, Gap: 2));
        return grid;
    }
}
