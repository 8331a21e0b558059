using Cornerwright.Mechanics.Geometry;

namespace Cornerwright.Mechanics.Clearance;

/// <summary>The strut's axis seen from the wheel: a line in S (a, 12, 3), m, with the lower reference on it.</summary>
/// <param name="LowerReference">Point from which the parts' heights are counted.</param>
/// <param name="Direction">Unit, up along the strut.</param>
/// <remarks>The default has no direction. Source: docs/theory/clearance.md §7.</remarks>
public readonly record struct StrutLine(Vec3 LowerReference, Vec3 Direction)
{
    /// <summary>The line from one gap between the wheel on the car and the strut, read at 12 o'clock.</summary>
    /// <param name="tyre">The tyre that was on the car.</param>
    /// <param name="rim">Its rim.</param>
    /// <param name="from">Place on the wheel; used only by an axial reading.</param>
    /// <param name="direction">
    /// <see cref="GapDirection.Nearest"/>: the tube's distance from the tyre's section square to the tube, wherever on the wall or
    /// shoulder it is least. <see cref="GapDirection.AxialInboard"/>: along the spindle from the feature to the tube.
    /// Others are no reading of a strut.
    /// </param>
    /// <param name="gap">m.</param>
    /// <param name="measuredRadius">Radius of what the tape touched (tube, spring or perch), m.</param>
    /// <param name="inclination">Strut to wheel plane, rad, positive when its top leans to the car's side.</param>
    /// <param name="referenceHeight">Lower reference above the hub's height, along the strut, m; negative below.</param>
    /// <param name="threeOffset">Axis off the wheel's middle toward 3 o'clock, m.</param>
    /// <remarks>The offset toward 3 o'clock is left out of the gap itself; its effect is below 0.1 mm for 10 mm on road tyres.
    /// Source: docs/theory/clearance.md §7.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A direction that is no reading of a strut: a caller's bug.</exception>
    public static StrutLine FromGap(
        in TyreSection tyre,
        in RimSection rim,
        WheelFeature from,
        GapDirection direction,
        double gap,
        double measuredRadius,
        double inclination,
        double referenceHeight,
        double threeOffset = 0)
    {
        var (sin, cos) = Math.SinCos(inclination);

        // n·x = offset is the axis in the (a, 12) plane, n from the wheel toward the strut.
        double na = -cos, nu = -sin;
        double offset;
        switch (direction)
        {
            case GapDirection.Nearest:
                offset = SectionReach(tyre, na, nu) + gap + measuredRadius;
                break;
            case GapDirection.AxialInboard:
                ProfilePoint at = WheelFeatures.At(tyre, rim, from).At;
                offset = (na * (at.A - gap)) + (nu * at.R) + measuredRadius;
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(direction), direction, "A strut gap is Nearest or AxialInboard.");
        }

        // Where the axis crosses hub height, then along the strut to the reference.
        Vec3 up = new(-sin, cos, 0);
        Vec3 atHub = new(offset / na, 0, threeOffset);
        return new(atHub + (up * referenceHeight), up);
    }

    /// <summary>
    /// The line after camber was taken at the knuckle's clamp: the wheel turned by <paramref name="turn"/> (rad, positive top outward)
    /// against the strut about the lower reference. Seen from the wheel the strut leans the other way. The turn is more than the
    /// camber changes, since the strut leans back meanwhile.
    /// </summary>
    /// <remarks>Moving the strut top tilts both together and needs no change here. Source: docs/theory/clearance.md §7.</remarks>
    public StrutLine AfterClamp(double turn) =>
        this with { Direction = Direction.RotatedAbout(Vec3.UnitZ, turn) };

    private static double SectionReach(in TyreSection tyre, double na, double nu)
    {
        const int ArcPoints = 6;
        Span<ProfilePoint> corners = stackalloc ProfilePoint[TyreProfile.PointCount(ArcPoints)];
        int n = TyreProfile.Write(tyre, ArcPoints, corners);
        double reach = double.NegativeInfinity;
        foreach (ProfilePoint p in corners[..n])
        {
            reach = Math.Max(reach, (na * p.A) + (nu * p.R));
        }

        return reach;
    }
}

/// <summary>Sizes of the parts on a strut, m; heights are above the lower reference along the strut.</summary>
/// <param name="TubeDiameter">Outer diameter of the damper body.</param>
/// <param name="TubeFoot">Where the bare tube begins (its clamp's top), may be negative.</param>
/// <param name="TubeTop">b: the tube's top.</param>
/// <param name="PerchDiameter">Outer diameter of the lower seat.</param>
/// <param name="PerchHeight">h: the seat's upper face.</param>
/// <param name="PerchThickness">The seat and its lock ring, downward from the upper face.</param>
/// <param name="SpringDiameter">Outer diameter of the main spring.</param>
/// <param name="StackLength">S: space from perch to upper seat at this travel.</param>
/// <param name="HelperDiameter">Outer diameter of a helper or tender, 0 for none.</param>
/// <param name="HelperLength">Its length at this travel, with its sheet.</param>
/// <param name="HelperBelow">True when it sits on the perch, false when under the upper seat.</param>
/// <remarks>The default is no strut. Source: docs/theory/clearance.md §7.</remarks>
public readonly record struct StrutParts(
    double TubeDiameter,
    double TubeFoot,
    double TubeTop,
    double PerchDiameter,
    double PerchHeight,
    double PerchThickness,
    double SpringDiameter,
    double StackLength,
    double HelperDiameter = 0,
    double HelperLength = 0,
    bool HelperBelow = false);

/// <summary>The pieces of a strut that a wheel can touch.</summary>
public enum StrutPiece
{
    Tube = 0,
    Perch = 1,
    Spring = 2,
    Helper = 3,
}

/// <summary>Cylinders for what hangs on a strut.</summary>
/// <remarks>Source: docs/theory/clearance.md §7.</remarks>
public static class StrutFurniture
{
    /// <summary>Most cylinders <see cref="Write"/> can write.</summary>
    public const int MostPieces = 4;

    /// <summary>One cylinder by its piece, in S. Source: docs/theory/clearance.md §7.</summary>
    public static CylinderObstacle Piece(in StrutLine line, in StrutParts parts, StrutPiece piece)
    {
        double helper = parts.HelperDiameter > 0 ? parts.HelperLength : 0;
        double springFoot = parts.PerchHeight + (parts.HelperBelow ? helper : 0);
        double helperFoot = parts.PerchHeight + (parts.HelperBelow ? 0 : parts.StackLength - helper);
        return piece switch
        {
            StrutPiece.Tube => Span(line, parts.TubeFoot, parts.TubeTop, parts.TubeDiameter),
            StrutPiece.Perch => Span(line, parts.PerchHeight - parts.PerchThickness, parts.PerchHeight, parts.PerchDiameter),
            StrutPiece.Spring => Span(line, springFoot, springFoot + parts.StackLength - helper, parts.SpringDiameter),
            _ => Span(line, helperFoot, helperFoot + helper, parts.HelperDiameter),
        };
    }

    /// <summary>
    /// Writes tube, perch, spring and, if there is one, helper, in the order of <see cref="StrutPiece"/>; returns how many.
    /// </summary>
    /// <remarks>Source: docs/theory/clearance.md §7.</remarks>
    public static int Write(in StrutLine line, in StrutParts parts, Span<CylinderObstacle> into)
    {
        int count = parts.HelperDiameter > 0 ? 4 : 3;
        for (int i = 0; i < count; i++)
        {
            into[i] = Piece(line, parts, (StrutPiece)i);
        }

        return count;
    }

    private static CylinderObstacle Span(in StrutLine line, double from, double to, double diameter) =>
        new(line.LowerReference + (line.Direction * from), line.Direction, Math.Max(0, to - from), diameter / 2);
}
