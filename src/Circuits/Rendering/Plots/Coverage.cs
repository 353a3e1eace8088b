namespace Circuits.Rendering.Plots;

/// <summary>
/// How much of each pixel shapes cover. Every edge adds, row by row, the area between it and the right border; a sum along the row then is the
/// cover, as exactly as numbers go.
/// </summary>
/// <param name="pixels">The picture.</param>
internal sealed class Coverage(Pixels pixels)
{
    private readonly float[] cells = new float[(pixels.Width + 2) * pixels.Height];
    private readonly int stride = pixels.Width + 2;
    private int left = int.MaxValue;
    private int first = int.MaxValue;
    private int right = -1;
    private int last = -1;

    /// <summary>Adds a closed shape.</summary>
    /// <param name="corners">Its corners, in pixels.</param>
    public void Add(ReadOnlySpan<(double X, double Y)> corners)
    {
        // Shapes that lie over one another must turn the same way.
        var area = 0.0;
        for (var i = 0; i < corners.Length; i++)
        {
            var (a, b) = (corners[i], corners[(i + 1) % corners.Length]);
            area += (a.X * b.Y) - (b.X * a.Y);
        }

        for (var i = 0; i < corners.Length; i++)
        {
            var (a, b) = (corners[i], corners[(i + 1) % corners.Length]);
            if (area >= 0) Edge(a.X, a.Y, b.X, b.Y);
            else Edge(b.X, b.Y, a.X, a.Y);
        }
    }

    /// <summary>Lays a colour over what is covered, and begins anew.</summary>
    public void Fill(byte red, byte green, byte blue, byte alpha, (int Left, int Top, int Right, int Bottom) clip)
    {
        for (var y = first; y <= last; y++)
        {
            var sum = 0f;
            for (var x = left; x <= Math.Min(right + 1, stride - 1); x++)
            {
                ref var cell = ref cells[(y * stride) + x];
                sum += cell;
                cell = 0;
                var share = Math.Min(Math.Abs(sum), 1) * alpha / byte.MaxValue;
                if (share > 1 / 512f && x < pixels.Width && x >= clip.Left && x < clip.Right && y >= clip.Top && y < clip.Bottom) pixels.Blend(x, y, (red, green, blue), share);
            }
        }

        (left, first, right, last) = (int.MaxValue, int.MaxValue, -1, -1);
    }

    private void Edge(double x0, double y0, double x1, double y1)
    {
        if (y0 == y1) return;
        var sign = 1f;
        if (y0 > y1) (x0, y0, x1, y1, sign) = (x1, y1, x0, y0, -1f);
        var slope = (x1 - x0) / (y1 - y0);
        for (var y = (int)Math.Max(Math.Floor(y0), 0); y < pixels.Height && y < y1; y++)
        {
            var (from, to) = (Math.Max(y, y0), Math.Min(y + 1, y1));
            if (to > from) Row(y, x0 + ((from - y0) * slope), x0 + ((to - y0) * slope), (to - from) * sign);
        }
    }

    // The part of an edge within one row: whole pixels to its right get all of its height, those that it crosses a share.
    private void Row(int y, double a, double b, double height)
    {
        var (from, to) = (Math.Clamp(Math.Min(a, b), 0, pixels.Width), Math.Clamp(Math.Max(a, b), 0, pixels.Width));
        (first, last) = (Math.Min(first, y), Math.Max(last, y));
        (left, right) = (Math.Min(left, (int)from), Math.Max(right, (int)to + 1));
        var cell = y * stride;
        if ((int)from == (int)to || to - from < 1e-9)
        {
            var share = 1 - (((from + to) / 2) - (int)from);
            cells[cell + (int)from] += (float)(height * share);
            cells[cell + (int)from + 1] += (float)(height * (1 - share));
            return;
        }

        for (var x = (int)from; x <= (int)to; x++)
        {
            var (start, end) = (Math.Max(x, from), Math.Min(x + 1, to));
            if (end <= start) continue;
            var part = height * (end - start) / (to - from);
            var share = x + 1 - ((start + end) / 2);
            cells[cell + x] += (float)(part * share);
            cells[cell + x + 1] += (float)(part * (1 - share));
        }
    }
}
