namespace Cornerwright.Garage.Designations;

/// <summary>Where a rim's parts lie. All m; offset positive with the mounting face toward the street side.</summary>
/// <remarks>Source: geometry of the inset as UN Regulation No. 124, paras 2.1.5 and 2.6 with Figure 1, defines it.</remarks>
public static class RimGeometry
{
    /// <summary>Least depth of the well for snap-in valves, m. Source: ISO 4000-2:2007, clause 6.2.</summary>
    public const double LeastWellDepth = 0.0173;

    /// <summary>
    /// Height of a J flange above the specified diameter, m. From memory, low confidence: ISO 4000-2, Table 2 (printed 17.3 or 17.5 mm).
    /// </summary>
    public const double JFlangeHeight = 0.0174;

    /// <summary>From the mounting face inboard to the inner bead seat: A/2 + ET.</summary>
    public static double MountingFaceToInnerBead(double rimWidth, double offset) => (rimWidth / 2) + offset;

    /// <summary>From the mounting face outboard to the outer bead seat: A/2 - ET.</summary>
    public static double MountingFaceToOuterBead(double rimWidth, double offset) => (rimWidth / 2) - offset;

    /// <summary>From the mounting face outboard to the tyre's outer flank: S/2 - ET.</summary>
    public static double MountingFaceToOuterFlank(double sectionWidth, double offset) => (sectionWidth / 2) - offset;

    /// <summary>From the mounting face inboard to the tyre's inner flank: S/2 + ET.</summary>
    public static double MountingFaceToInnerFlank(double sectionWidth, double offset) => (sectionWidth / 2) + offset;

    /// <summary>How far the outer lip moves out from wheel 1 to wheel 2; a spacer acts like less offset.</summary>
    public static double OuterLipMovesOut(
        double width1, double offset1, double width2, double offset2, double spacer1 = 0, double spacer2 = 0) =>
        ((width2 - width1) / 2) - (offset2 - offset1) + (spacer2 - spacer1);

    /// <summary>How far the inner lip moves in from wheel 1 to wheel 2.</summary>
    public static double InnerLipMovesIn(
        double width1, double offset1, double width2, double offset2, double spacer1 = 0, double spacer2 = 0) =>
        ((width2 - width1) / 2) + (offset2 - offset1) - (spacer2 - spacer1);

    /// <summary>Change of track when both wheels of an axle change, positive wider.</summary>
    public static double TrackChange(double offset1, double offset2, double spacer1 = 0, double spacer2 = 0) =>
        2 * (offset1 - offset2 + spacer2 - spacer1);

    /// <summary>Centre distance of neighbouring bolt holes: PCD·sin(180°/n), n at least 2.</summary>
    public static double BoltHoleDistance(int bolts, double boltCircle) => boltCircle * Math.Sin(Math.PI / bolts);

    /// <summary>The bolt circle from the centre distance of neighbouring holes, n at least 2: how it is taken with a calliper.</summary>
    public static double BoltCircleFromHoleDistance(int bolts, double holeDistance) => holeDistance / Math.Sin(Math.PI / bolts);
}
