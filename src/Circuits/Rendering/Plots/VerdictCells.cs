using System.Collections.Immutable;
using Circuits.Model;
using Circuits.Rendering.Matrix;
using OxyPlot;
using OxyPlot.Annotations;

namespace Circuits.Rendering.Plots;

/// <summary>A cell for each verdict, told by colour, hatching and letter, with a key below and what leads to each row on the right.</summary>
/// <param name="rows">The verdicts.</param>
/// <param name="notes">What stands beside each row.</param>
internal sealed class VerdictCells(ImmutableArray<ImmutableArray<Verdict>> rows, ImmutableArray<string> notes) : Annotation
{
    /// <summary>Room for the key below the cells.</summary>
    public const double KeyRoom = 72;

    private const double Size = 12;
    private const double Swatch = 20;

    // The key names those that occur, and what is right.
    private readonly ImmutableArray<Verdict> kinds = [.. rows.SelectMany(row => row).Append(Verdict.AsCharted).Distinct().Order()];

    // The key and the notes stand outside the plot's area.
    public override OxyRect GetClippingRect() => new(0, 0, PlotModel.Width, PlotModel.Height);

    public override void Render(IRenderContext rc)
    {
        base.Render(rc);
        for (var row = 0; row < rows.Length; row++)
        {
            for (var column = 0; column < rows[row].Length; column++)
            {
                var (a, b) = (Transform(new DataPoint(column - 0.46, row - 0.44)), Transform(new DataPoint(column + 0.46, row + 0.44)));
                Cell(rc, new OxyRect(a, b), rows[row][column]);
            }

            var beside = Transform(new DataPoint(rows[row].Length - 0.5, row));
            rc.DrawText(new ScreenPoint(beside.X + 12, beside.Y), notes[row], PlotColors.Ink, null, 11, 400, 0, HorizontalAlignment.Left, VerticalAlignment.Middle);
        }

        Key(rc);
    }

    private void Key(IRenderContext rc)
    {
        var area = PlotModel.PlotArea;
        rc.DrawText(new ScreenPoint(area.Left - 6, area.Top - 6), "group, assemblies", PlotColors.Faint, null, Size, 400, 0, HorizontalAlignment.Right, VerticalAlignment.Bottom);
        rc.DrawText(new ScreenPoint(area.Right + 12, area.Top - 6), "revisions", PlotColors.Faint, null, Size, 400, 0, HorizontalAlignment.Left, VerticalAlignment.Bottom);
        var y = area.Bottom + 24;
        var x = 16.0;
        foreach (var kind in kinds)
        {
            Cell(rc, new OxyRect(x, y - (Swatch / 2), Swatch, Swatch), kind);
            var word = Words.Of(kind);
            rc.DrawText(new ScreenPoint(x + Swatch + 6, y), word, PlotColors.Ink, null, Size, 400, 0, HorizontalAlignment.Left, VerticalAlignment.Middle);
            x += Swatch + 6 + (Letters.Width(word) * Size) + 18;
        }

        rc.DrawText(new ScreenPoint(16, y + 24), "* matched set", PlotColors.Faint, null, Size, 400, 0, HorizontalAlignment.Left, VerticalAlignment.Middle);
    }

    private static void Cell(IRenderContext rc, OxyRect cell, Verdict verdict)
    {
        rc.DrawRectangle(cell, Color(verdict), PlotColors.Faint, 0.6, EdgeRenderingMode.Automatic);
        foreach (var (from, to) in Hatching(cell, verdict)) rc.DrawLine([from, to], PlotColors.Ink, 0.6, EdgeRenderingMode.Automatic, null, LineJoin.Round);
        var isDark = verdict is Verdict.Lost or Verdict.DidNotConverge or Verdict.NeverSettles;
        if (verdict is Verdict.Weak or Verdict.Unwanted)
            rc.DrawRectangle(new OxyRect(cell.Center.X - 7, cell.Center.Y - 8, 14, 16), Color(verdict), OxyColors.Undefined, 0, EdgeRenderingMode.Automatic);
        rc.DrawText(cell.Center, Letter(verdict), isDark ? PlotColors.Paper : PlotColors.Ink, null, Size, 700, 0, HorizontalAlignment.Center, VerticalAlignment.Middle);
    }

    private static IEnumerable<(ScreenPoint From, ScreenPoint To)> Hatching(OxyRect cell, Verdict verdict)
    {
        const double Step = 6;
        if (verdict == Verdict.Weak)
        {
            for (var y = cell.Top + Step; y < cell.Bottom - 1; y += Step) yield return (new ScreenPoint(cell.Left, y), new ScreenPoint(cell.Right, y));
        }

        if (verdict != Verdict.Unwanted) yield break;
        for (var offset = Step; offset < cell.Width + cell.Height - 1; offset += Step)
        {
            var (left, right) = (Math.Max(0, offset - cell.Height), Math.Min(offset, cell.Width));
            yield return (new ScreenPoint(cell.Left + left, cell.Top + offset - left), new ScreenPoint(cell.Left + right, cell.Top + offset - right));
        }
    }

    private static OxyColor Color(Verdict verdict) => verdict switch
    {
        Verdict.AsCharted => PlotColors.Fine,
        Verdict.NotDecided or Verdict.Weak => PlotColors.Weak,
        Verdict.OverPressure or Verdict.Starved or Verdict.Unwanted => PlotColors.Unwanted,
        Verdict.Lost => PlotColors.Lost,
        _ => PlotColors.Unsettled,
    };

    private static string Letter(Verdict verdict) => MatrixMark.Of(verdict);
}
