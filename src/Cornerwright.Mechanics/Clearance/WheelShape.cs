using System.Diagnostics;
using Cornerwright.Mechanics.Geometry;
using Cornerwright.Mechanics.Motion;

namespace Cornerwright.Mechanics.Clearance;

/// <summary>
/// A wheel as a solid of revolution of any number of convex pieces, kept ready for many questions; points are given in B with a pose.
/// </summary>
/// <remarks>
/// As <see cref="WheelSolid"/>, but on the heap, of any profile, and with a second table in single precision for
/// bounds of eight points at a time.
/// The distance to the whole is the least over the pieces: exact outside; inside, the depth in the deepest single piece, which is at most
/// the depth in the whole. Source: docs/theory/clearance.md §1.
/// </remarks>
public sealed class WheelShape
{
    private readonly Piece[] pieces;

    private WheelShape(Piece[] pieces, ProfilePoint[][] corners)
    {
        this.pieces = pieces;
        Corners = corners;
        double reach = 0;
        foreach (ProfilePoint p in corners.SelectMany(c => c))
        {
            reach = Math.Max(reach, Math.Sqrt((p.A * p.A) + (p.R * p.R)));
        }

        Reach = reach;
    }

    public int Pieces => pieces.Length;

    /// <summary>The convex pieces' corners, counter-clockwise with a to the right and r up.</summary>
    public IReadOnlyList<IReadOnlyList<ProfilePoint>> Corners { get; }

    /// <summary>Furthest point of the wheel from the hub-face centre, m.</summary>
    public double Reach { get; }

    /// <summary>Tyre and rim by their sections. Source: docs/theory/clearance.md §2.</summary>
    /// <param name="tyre">A sound section.</param>
    /// <param name="rim">A sound section, or the default for no rim.</param>
    /// <param name="arcPoints">2 to 32, even, as in <see cref="WheelSolid.Write"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">An unsound tyre: a caller's bug.</exception>
    public static WheelShape Of(in TyreSection tyre, in RimSection rim, int arcPoints)
    {
        var corners = new ProfilePoint[TyreProfile.PointCount(arcPoints)];
        int n = TyreProfile.Write(tyre, arcPoints, corners);
        List<(WheelPart, ProfilePoint[])> all = [(WheelPart.Tyre, corners[..n])];
        for (int i = 0; i < 3 && rim.IsSound; i++)
        {
            var piece = new ProfilePoint[4];
            RimProfile.WritePiece(rim, i, piece);
            all.Add(((WheelPart)(i + 1), piece));
        }

        return OfConvex(all);
    }

    /// <summary>A wheel of measured outlines, each a closed polygon of any shape without self-crossing, either way round.</summary>
    /// <param name="outlines">Each with the part it belongs to; at least one. r at least 0, at least three corners, an area.</param>
    /// <exception cref="ArgumentException">
    /// An outline crosses itself, has no area or is not finite: check what people enter with <see cref="ConvexSplit.WhyNot"/> first.
    /// </exception>
    /// <remarks>Cut into convex pieces (<see cref="ConvexSplit"/>). Source: docs/theory/clearance.md §1.</remarks>
    public static WheelShape Of(params IReadOnlyList<WheelOutline> outlines)
    {
        List<(WheelPart, ProfilePoint[])> all = [];
        foreach (WheelOutline outline in outlines)
        {
            foreach (ProfilePoint[] piece in ConvexSplit.Of([.. outline.Corners]))
            {
                all.Add((outline.Part, piece));
            }
        }

        return OfConvex(all);
    }

    /// <summary>The part of the wheel that a piece belongs to. Source: layout of this type.</summary>
    public WheelPart PartOf(int piece) => pieces[piece].Part;

    /// <summary>What no depth in a piece can exceed: half the smaller side of its box, m. Source: geometry of a box.</summary>
    public double MostDepth(int piece)
    {
        ref readonly ProfileBox box = ref pieces[piece].Box;
        double tall = box.LeastR > 0 ? 0.5 * (box.MostR - box.LeastR) : box.MostR;
        return Math.Min(0.5 * (box.MostA - box.LeastA), tall) + 1e-6;
    }

    /// <summary>
    /// The most of <see cref="MostDepth(int)"/> over the pieces of a part, m; 0 for a part the wheel does not have.
    /// Source: geometry of a box.
    /// </summary>
    public double MostDepth(WheelPart part)
    {
        double most = 0;
        for (int i = 0; i < pieces.Length; i++)
        {
            most = pieces[i].Part == part ? Math.Max(most, MostDepth(i)) : most;
        }

        return most;
    }

    /// <summary>
    /// One piece as a solid of its own, for obstacles that are not triangles or points. Source: docs/theory/clearance.md §1.
    /// </summary>
    public WheelSolid PieceAsSolid(int piece) => WheelSolid.Of(pieces[piece].Exact());

    /// <summary>Signed distance of (a, r) to one piece with its gradient. Source: docs/theory/clearance.md §1.</summary>
    public double PieceDistance(int piece, double a, double r, out double gradientA, out double gradientR) =>
        pieces[piece].Exact().SignedDistance(a, r, out gradientA, out gradientR);

    /// <summary>Signed distance of (a, r) to the whole wheel. Source: docs/theory/clearance.md §1.</summary>
    public double SignedDistance(double a, double r, out int piece, out double gradientA, out double gradientR)
    {
        double best = pieces[0].Exact().SignedDistance(a, r, out gradientA, out gradientR);
        piece = 0;
        for (int i = 1; i < pieces.Length; i++)
        {
            double d = pieces[i].Exact().SignedDistance(a, r, out double ga, out double gr);
            if (d < best)
            {
                (best, piece, gradientA, gradientR) = (d, i, ga, gr);
            }
        }

        return best;
    }

    /// <summary>Signed distance of a point of B to the wheel at a pose. Source: docs/theory/clearance.md §1.</summary>
    public double SignedDistance(in WheelPose pose, in Vec3 pointInBody)
    {
        Vec3 u = pointInBody - pose.HubFace;
        double a = u.Dot(pose.Spindle);
        return SignedDistance(a, (u - (pose.Spindle * a)).Length, out _, out _, out _);
    }

    /// <summary>The least box round a piece in the half-plane, m. Source: layout of this type.</summary>
    internal ref readonly ProfileBox BoxOf(int piece) => ref pieces[piece].Box;

    /// <summary>
    /// Edges of a piece for eight points at a time: a, r, tangent a, tangent r, length of each. Source: layout of this type.
    /// </summary>
    internal ReadOnlySpan<float> Edges(int piece) => pieces[piece].Coarse;

    private static WheelShape OfConvex(List<(WheelPart Part, ProfilePoint[] Corners)> all)
    {
        if (all.Count == 0)
        {
            throw new ArgumentException("A wheel has at least one outline.", nameof(all));
        }

        return new([.. all.Select(p => Piece.From(p.Part, p.Corners))], [.. all.Select(p => p.Corners)]);
    }

    private sealed class Piece(WheelPart part, int corners, double[] exact, float[] coarse, ProfileBox box)
    {
        private readonly double[] exact = exact;
        private readonly ProfileBox box = box;

        public ref readonly ProfileBox Box => ref box;

        public WheelPart Part => part;

        public float[] Coarse => coarse;

        public ConvexProfile Exact() => ConvexProfile.Written(corners, exact);

        public static Piece From(WheelPart part, ProfilePoint[] corners)
        {
            var exact = new double[ConvexProfile.BufferLength(corners.Length)];
            ConvexProfile.Write(corners, exact);
            List<float> coarse = [];
            for (int i = 0; i < corners.Length; i++)
            {
                ProfilePoint p = corners[i], q = corners[i + 1 < corners.Length ? i + 1 : 0];
                double length = Math.Sqrt(((q.A - p.A) * (q.A - p.A)) + ((q.R - p.R) * (q.R - p.R)));
                if (length > 1e-12 && !(p.R == 0 && q.R == 0))
                {
                    coarse.AddRange([(float)p.A, (float)p.R, (float)((q.A - p.A) / length), (float)((q.R - p.R) / length), (float)length]);
                }
            }

            Debug.Assert(coarse.Count >= 10, "A convex piece has an area.");
            return new(
                part, corners.Length, exact, [.. coarse],
                new((float)corners.Min(p => p.A), (float)corners.Max(p => p.A), (float)corners.Min(p => p.R),
                (float)corners.Max(p => p.R)));
        }
    }
}

/// <summary>A box in the half-plane, m, rounded to single precision: for bounds only.</summary>
internal readonly record struct ProfileBox(float LeastA, float MostA, float LeastR, float MostR);

/// <summary>A measured outline of a part of the wheel: a closed polygon in the half-plane (a, r), m, in S.</summary>
/// <remarks>Source: docs/theory/clearance.md §1.</remarks>
public sealed record WheelOutline(WheelPart Part, IReadOnlyList<ProfilePoint> Corners);
