using System.Runtime.CompilerServices;
using Cornerwright.Mechanics.Geometry;

namespace Cornerwright.Mechanics.Clearance;

/// <summary>Which part of the wheel is nearest.</summary>
public enum WheelPart
{
    Tyre = 0,
    RimOuterLip = 1,
    RimInnerLip = 2,
    RimBarrel = 3,
    Spokes = 4,
}

/// <summary>
/// Tyre and rim as solids of revolution made of convex profiles, ready for distances; points are given in S (a, 12, 3), m.
/// </summary>
/// <remarks>
/// The distance to the whole is the least over the pieces: exact outside; inside it is the depth in the deepest single piece, which is
/// at most the depth in the whole. Source: docs/theory/clearance.md §1.
/// </remarks>
public readonly ref struct WheelSolid
{
    private readonly ConvexProfile tyre;
    private readonly ConvexProfile outerLip;
    private readonly ConvexProfile innerLip;
    private readonly ConvexProfile barrel;

    private readonly Around around;

    private WheelSolid(
        ConvexProfile tyre, ConvexProfile outerLip, ConvexProfile innerLip, ConvexProfile barrel, int pieces, Around around)
    {
        this.tyre = tyre;
        this.outerLip = outerLip;
        this.innerLip = innerLip;
        this.barrel = barrel;
        this.around = around;
        Pieces = pieces;
    }

    /// <summary>What the wheel stays within, m: a range of a, the largest radius, the rim's largest radius.</summary>
    private readonly record struct Around(double From, double To, double Radius, double RimRadius)
    {
        public const int Numbers = 4;

        public static Around Of(ReadOnlySpan<double> numbers) => new(numbers[0], numbers[1], numbers[2], numbers[3]);

        public Around With(scoped ReadOnlySpan<ProfilePoint> corners, bool rim)
        {
            var (from, to, radius, rimRadius) = this;
            foreach (ProfilePoint p in corners)
            {
                (from, to, radius) = (Math.Min(from, p.A), Math.Max(to, p.A), Math.Max(radius, p.R));
                rimRadius = rim ? Math.Max(rimRadius, p.R) : rimRadius;
            }

            return new(from, to, radius, rimRadius);
        }

        public void Write(Span<double> into) => (into[0], into[1], into[2], into[3]) = (From, To, Radius, RimRadius);
    }

    /// <summary>1 for a bare tyre, 4 with its rim. Pieces are numbered as <see cref="WheelPart"/>.</summary>
    public int Pieces { get; }

    /// <summary>How many doubles <see cref="Write"/> needs. Source: layout of this type.</summary>
    public static int BufferLength(int arcPoints) =>
        ConvexProfile.BufferLength(TyreProfile.PointCount(arcPoints)) + (3 * ConvexProfile.BufferLength(4)) + Around.Numbers;

    /// <summary>Lays out tyre and rim in the caller's buffer.</summary>
    /// <param name="tyre">A sound section.</param>
    /// <param name="rim">A sound section, or the default for no rim.</param>
    /// <param name="arcPoints">2 to 32, even. 4: shoulder chords up to 0.8 mm inside the curve; 6: 0.4 mm; 12: 0.1 mm.</param>
    /// <param name="buffer">At least <see cref="BufferLength"/>; it must outlive the result.</param>
    /// <remarks>Source: docs/theory/clearance.md §2.</remarks>
    public static WheelSolid Write(scoped in TyreSection tyre, scoped in RimSection rim, int arcPoints, Span<double> buffer)
    {
        Span<ProfilePoint> corners = stackalloc ProfilePoint[TyreProfile.PointCount(arcPoints)];
        int n = TyreProfile.Write(tyre, arcPoints, corners);
        int used = ConvexProfile.BufferLength(corners.Length);
        ConvexProfile tread = ConvexProfile.Write(corners[..n], buffer[..used]);
        Around around = new Around(double.PositiveInfinity, double.NegativeInfinity, 0, 0).With(corners[..n], rim: false);
        if (!rim.IsSound)
        {
            return new(tread, default, default, default, 1, around);
        }

        int piece = ConvexProfile.BufferLength(4);
        RimProfile.WritePiece(rim, 0, corners);
        ConvexProfile outer = ConvexProfile.Write(corners[..4], buffer.Slice(used, piece));
        around = around.With(corners[..4], rim: true);
        RimProfile.WritePiece(rim, 1, corners);
        ConvexProfile inner = ConvexProfile.Write(corners[..4], buffer.Slice(used + piece, piece));
        around = around.With(corners[..4], rim: true);
        RimProfile.WritePiece(rim, 2, corners);
        ConvexProfile hollow = ConvexProfile.Write(corners[..4], buffer.Slice(used + (2 * piece), piece));
        around = around.With(corners[..4], rim: true);
        around.Write(buffer[(used + (3 * piece))..]);
        return new(tread, outer, inner, hollow, 4, around);
    }

    /// <summary>
    /// A wheel with its rim that <see cref="Write"/> laid out in this buffer before: nothing is computed. Source: layout of this type.
    /// </summary>
    /// <param name="arcPoints">As it was written.</param>
    /// <param name="buffer">As it was written, at least <see cref="BufferLength"/>.</param>
    public static WheelSolid Written(int arcPoints, ReadOnlySpan<double> buffer)
    {
        int corners = TyreProfile.PointCount(arcPoints), used = ConvexProfile.BufferLength(corners), piece = ConvexProfile.BufferLength(4);
        return new(
            ConvexProfile.Written(corners, buffer[..used]),
            ConvexProfile.Written(4, buffer.Slice(used, piece)),
            ConvexProfile.Written(4, buffer.Slice(used + piece, piece)),
            ConvexProfile.Written(4, buffer.Slice(used + (2 * piece), piece)),
            4,
            Around.Of(buffer[(used + (3 * piece))..]));
    }

    /// <summary>A solid of one convex profile, for shapes of the caller's own. Source: docs/theory/clearance.md §1.</summary>
    public static WheelSolid Of(ConvexProfile profile) => new(
        profile, default, default, default, 1,
        new Around(profile.Furthest(-1, 0).A, profile.Furthest(1, 0).A, profile.Furthest(0, 1).R, 0));

    /// <summary>The same wheel without its rim. Source: layout of this type.</summary>
    public WheelSolid TyreAlone() => new(tyre, default, default, default, 1, around);

    /// <summary>Signed distance of (a, r) to one piece with its gradient. Source: docs/theory/clearance.md §1.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public double PieceDistance(int piece, double a, double r, out double gradientA, out double gradientR) => piece switch
    {
        0 => tyre.SignedDistance(a, r, out gradientA, out gradientR),
        1 => outerLip.SignedDistance(a, r, out gradientA, out gradientR),
        2 => innerLip.SignedDistance(a, r, out gradientA, out gradientR),
        _ => barrel.SignedDistance(a, r, out gradientA, out gradientR),
    };

    /// <summary>
    /// True if no point of a segment can be nearer to a piece than a distance: the wheel ends at the tyre's radius, its rim at its lips'.
    /// Source: docs/theory/clearance.md §5.
    /// </summary>
    internal bool IsFar(int piece, in Vec3 from, in Vec3 direction, double length, double distance)
    {
        Vec3 to = from + (direction * length);
        double r0 = Math.Sqrt((from.Y * from.Y) + (from.Z * from.Z)), r1 = Math.Sqrt((to.Y * to.Y) + (to.Z * to.Z));
        return (0.5 * (r0 + r1 - length)) - (piece == 0 ? around.Radius : around.RimRadius) >= distance
            || (distance >= 0 && (Math.Max(from.X, to.X) <= around.From - distance || Math.Min(from.X, to.X) >= around.To + distance));
    }

    /// <summary>
    /// True only if a point in S is at least so far from the wheel: quickly told for most that are. Source: docs/theory/clearance.md §5.
    /// </summary>
    public bool IsBeyond(in Vec3 p, double distance)
    {
        double most = around.Radius + distance;
        return distance >= 0
            && ((p.Y * p.Y) + (p.Z * p.Z) >= most * most || p.X <= around.From - distance || p.X >= around.To + distance);
    }

    /// <summary>The corner of a piece furthest in a direction of the half-plane. Source: definition of a support point.</summary>
    public ProfilePoint PieceFurthest(int piece, double directionA, double directionR) => piece switch
    {
        0 => tyre.Furthest(directionA, directionR),
        1 => outerLip.Furthest(directionA, directionR),
        2 => innerLip.Furthest(directionA, directionR),
        _ => barrel.Furthest(directionA, directionR),
    };

    /// <summary>
    /// Signed distance of a half-plane point to the whole wheel, with nearest piece and gradient. Source: docs/theory/clearance.md §1.
    /// </summary>
    public double SignedDistance(double a, double r, out WheelPart part, out double gradientA, out double gradientR)
    {
        double best = tyre.SignedDistance(a, r, out gradientA, out gradientR);
        part = WheelPart.Tyre;
        if (r - around.RimRadius >= best)
        {
            return best;
        }

        for (int i = 1; i < Pieces; i++)
        {
            double d = PieceDistance(i, a, r, out double ga, out double gr);
            if (d < best)
            {
                (best, part, gradientA, gradientR) = (d, (WheelPart)i, ga, gr);
            }
        }

        return best;
    }

    /// <summary>Signed distance of a point in S. Source: docs/theory/clearance.md §1.</summary>
    public double SignedDistance(in Vec3 pointInSpindle) =>
        SignedDistance(
            pointInSpindle.X, Math.Sqrt((pointInSpindle.Y * pointInSpindle.Y) + (pointInSpindle.Z * pointInSpindle.Z)), out _, out _,
            out _);
}
