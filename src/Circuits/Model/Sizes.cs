using Circuits.Quantities;

namespace Circuits.Model;

/// <summary>The shape of an opening, a restriction or a leak.</summary>
public abstract record Shape
{
    private Shape()
    {
    }

    /// <summary>The area, or null when no size is given.</summary>
    public abstract Area? Area { get; }

    /// <summary>A round hole.</summary>
    /// <param name="Diameter">Its diameter.</param>
    /// <param name="Text">The size as the file writes it, <c>#45</c> say.</param>
    public sealed record Hole(Length Diameter, string Text) : Shape
    {
        /// <summary>How deep it is drilled, where that counts against its width; null for a hole in a sheet.</summary>
        public Length? Depth { get; init; }

        /// <summary>The number drill that the file gives for it, <c>#45</c>; null for a size.</summary>
        public string? Drill => Text is ['#', ..] ? Text : null;

        /// <inheritdoc/>
        public override Area? Area => Diameter.HoleArea;
    }

    /// <summary>A slot; its area is its length times its width.</summary>
    /// <param name="Width">The shorter side.</param>
    /// <param name="Length">The longer side.</param>
    public sealed record Slot(Length Width, Length Length) : Shape
    {
        /// <inheritdoc/>
        public override Area? Area => new(Width.Millimetres * Length.Millimetres);
    }

    /// <summary>Any other shape, of which only the area is known.</summary>
    /// <param name="Size">Its area.</param>
    public sealed record Cutout(Area Size) : Shape
    {
        /// <inheritdoc/>
        public override Area? Area => Size;
    }

    /// <summary>A narrow gap along which oil creeps, thick or thin as it is.</summary>
    /// <param name="Height">From wall to wall; the radial clearance of a round one that is centred.</param>
    /// <param name="Length">Along the flow.</param>
    public abstract record Gap(Length Height, Length Length) : Shape
    {
        /// <summary>Across the flow; once around for a round one.</summary>
        public abstract Length Width { get; }

        /// <inheritdoc/>
        public override Area? Area => new(Height.Millimetres * Width.Millimetres);
    }

    /// <summary>The gap between a spool or piston and its bore.</summary>
    /// <param name="Diameter">Diameter of the bore.</param>
    /// <param name="Clearance">Radial clearance when centred.</param>
    /// <param name="Length">Length of the land.</param>
    /// <param name="Eccentricity">Offset over clearance, 0 centred to 1 touching.</param>
    public sealed record RoundGap(Length Diameter, Length Clearance, Length Length, double Eccentricity) : Gap(Clearance, Length)
    {
        /// <inheritdoc/>
        public override Length Width => new(Math.PI * Diameter.Millimetres);
    }

    /// <summary>A flat gap: under a gasket, between faces that do not meet.</summary>
    /// <param name="Across">Width across the flow.</param>
    /// <param name="Height">From wall to wall.</param>
    /// <param name="Length">Along the flow.</param>
    public sealed record FlatGap(Length Across, Length Height, Length Length) : Gap(Height, Length)
    {
        /// <inheritdoc/>
        public override Length Width => Across;
    }

    /// <summary>An opening whose size the file does not give.</summary>
    public sealed record Unsized : Shape
    {
        /// <summary>The one value.</summary>
        public static Unsized Instance { get; } = new();

        /// <inheritdoc/>
        public override Area? Area => null;
    }
}
