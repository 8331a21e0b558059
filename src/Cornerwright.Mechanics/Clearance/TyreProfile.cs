namespace Cornerwright.Mechanics.Clearance;

/// <summary>The tyre's cross-section as a convex polygon.</summary>
/// <remarks>
/// Each side: bead, an elliptic wall to the widest place at mid height, an elliptic shoulder (a conic tangent to the wall at the widest
/// place and to the tread at its edge), then a parabolic crown. Corners lie on these curves. A tyre stretched over a wider rim gets a
/// straight wall from the bead. Source: docs/theory/clearance.md §2.
/// </remarks>
public static class TyreProfile
{
    /// <summary>Corners of a tyre polygon with so many points an arc (2 to 32). Source: layout of <see cref="Write"/>.</summary>
    public static int PointCount(int arcPoints) => (2 * SideCount(arcPoints)) - 1;

    /// <summary>
    /// Writes the corners, street side first, from bead over crown to the inner bead (counter-clockwise), into <paramref name="into"/>.
    /// </summary>
    /// <param name="tyre">A sound section (<see cref="TyreSection.IsSound"/>).</param>
    /// <param name="arcPoints">Steps of each wall and each shoulder, even, 2 to 32; the crown takes half as many a side.</param>
    /// <param name="into">At least <see cref="PointCount"/> long.</param>
    /// <returns>The number written.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The section is not sound or the count out of range: a caller's bug.</exception>
    /// <remarks>
    /// Source: docs/theory/clearance.md §2; conic with middle weight 1/√2, e.g. Farin, Curves and Surfaces for CAGD, ch. 12.
    /// </remarks>
    public static int Write(in TyreSection tyre, int arcPoints, Span<ProfilePoint> into)
    {
        if (!tyre.IsSound || arcPoints is < 2 or > 32 || (arcPoints & 1) != 0)
        {
            throw new ArgumentOutOfRangeException(nameof(tyre), "A tyre section must be sound, with 2 to 32 (even) points an arc.");
        }

        var shape = new SideShape(tyre);
        int side = SideCount(arcPoints);
        int n = 0;
        for (int i = 0; i < arcPoints; i++)
        {
            into[n++] = Conic(shape.Bead, shape.WallCorner, shape.Widest, (double)i / arcPoints);
        }

        for (int i = 0; i < arcPoints; i++)
        {
            into[n++] = Conic(shape.Widest, shape.ShoulderCorner, shape.TreadEdge, (double)i / arcPoints);
        }

        int crownSteps = arcPoints / 2;
        for (int i = 0; i <= crownSteps; i++)
        {
            double share = 1 - ((double)i / crownSteps);
            into[n++] = new(share * shape.TreadEdge.A, tyre.CrownRadius - (tyre.ShoulderDrop * share * share));
        }

        // The inner half mirrors the street half; the crown's middle is there already.
        for (int i = side - 2; i >= 0; i--)
        {
            into[n++] = new(-into[i].A, into[i].R);
        }

        // At speed what lies outside the widest place stretches outward and the rest stays: the wall is upright there, so that no corner
        // appears. The straight wall of a stretched tyre has its widest place at the bead.
        double widest = shape.WallNormal.R > 0 ? tyre.BeadRadius : tyre.WidestRadius, stretch = tyre.Growth / (tyre.CrownRadius - widest);
        for (int i = 0; i < n; i++)
        {
            into[i] = new(into[i].A + tyre.AxialCentre, into[i].R + (stretch * Math.Max(0, into[i].R - widest)));
        }

        return n;
    }

    private static int SideCount(int arcPoints) => (2 * arcPoints) + (arcPoints / 2) + 1;

    internal static ProfilePoint Conic(ProfilePoint p, ProfilePoint corner, ProfilePoint q, double t)
    {
        double b0 = (1 - t) * (1 - t), b1 = 2 * t * (1 - t) * 0.70710678118654752, b2 = t * t;
        double sum = b0 + b1 + b2;
        return new(((b0 * p.A) + (b1 * corner.A) + (b2 * q.A)) / sum, ((b0 * p.R) + (b1 * corner.R) + (b2 * q.R)) / sum);
    }

    /// <summary>The control points of one side, a counted from the centre plane.</summary>
    internal readonly struct SideShape
    {
        public SideShape(in TyreSection tyre)
        {
            Bead = new(tyre.BeadWidth / 2, tyre.BeadRadius);
            TreadEdge = new(tyre.TreadWidth / 2, tyre.CrownRadius - tyre.ShoulderDrop);

            // A wall cannot be hollow: at mid height it reaches at least the straight line from bead to tread edge.
            double share = (tyre.WidestRadius - Bead.R) / (TreadEdge.R - Bead.R);
            double half = Math.Max(tyre.SectionWidth / 2, Bead.A + (share * (TreadEdge.A - Bead.A)));
            Widest = new(half, tyre.WidestRadius);

            // Direction of the wall at the widest place: upright, or along the straight wall of a stretched tyre.
            bool stretched = Bead.A >= half;
            double lean = stretched ? (half - Bead.A) / (Widest.R - Bead.R) : 0;
            WallCorner = stretched ? new(0.5 * (Bead.A + half), 0.5 * (Bead.R + Widest.R)) : new(half, Bead.R);

            // Where the tread's slope at its edge meets the wall's direction, kept above the widest place.
            double slope = 4 * tyre.ShoulderDrop / tyre.TreadWidth;
            double up = (TreadEdge.R - Widest.R - (slope * (half - TreadEdge.A))) / (1 + (slope * lean));
            double least = 0.05 * (TreadEdge.R - Widest.R);
            double most = lean < 0 ? (TreadEdge.A - half) / lean : double.PositiveInfinity;
            up = Math.Min(Math.Max(up, least), most);
            ShoulderCorner = new(half + (lean * up), Widest.R + up);
            double length = Math.Sqrt(1 + (lean * lean));
            WallNormal = new(1 / length, -lean / length);
        }

        /// <summary>Outward at the widest place: axial, or square to the straight wall of a stretched tyre.</summary>
        public ProfilePoint WallNormal { get; }

        public ProfilePoint Bead { get; }
        public ProfilePoint WallCorner { get; }
        public ProfilePoint Widest { get; }
        public ProfilePoint ShoulderCorner { get; }
        public ProfilePoint TreadEdge { get; }
    }
}
