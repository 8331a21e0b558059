namespace Cornerwright.Mechanics.Clearance;

/// <summary>A tyre's cross-section as a person can measure or read it, m, symmetric about its centre plane.</summary>
/// <param name="AxialCentre">a of the centre plane: spacer minus offset (<see cref="WheelPlacement"/>).</param>
/// <param name="BeadRadius">Half the rim diameter code in m (17 gives 0.216).</param>
/// <param name="BeadWidth">Distance between the beads: the rim's width code in m.</param>
/// <param name="OuterDiameter">Over the crown.</param>
/// <param name="SectionWidth">At the widest place, without lettering.</param>
/// <param name="TreadWidth">Between the tread edges.</param>
/// <param name="ShoulderDrop">From the crown down to the tread edge, along r.</param>
/// <remarks>The default is no tyre. Source: docs/theory/clearance.md §2.</remarks>
public readonly record struct TyreSection(
    double AxialCentre,
    double BeadRadius,
    double BeadWidth,
    double OuterDiameter,
    double SectionWidth,
    double TreadWidth,
    double ShoulderDrop)
{
    /// <summary>
    /// Tread width over section width when nobody measured it. Estimate: common practice, no source; ±0.05 covers road tyres we know of.
    /// </summary>
    public const double TreadShareEstimate = 0.85;

    /// <summary>Shoulder drop over section height when nobody measured it. Estimate: common practice, no source.</summary>
    public const double ShoulderDropShareEstimate = 0.07;

    /// <summary>
    /// By how much the crown stands further out at speed, m, at least 0: all that lies outside the widest place is stretched outward,
    /// the rest stays, so that no place of a grown tyre lies inside the same tyre at rest.
    /// </summary>
    /// <remarks>Source: docs/theory/allowances.md §2.</remarks>
    public double Growth { get; init; }

    /// <summary>At rest. Source: half the outer diameter.</summary>
    public double CrownRadius => OuterDiameter / 2;
    public double SectionHeight => CrownRadius - BeadRadius;

    /// <summary>
    /// Radius of the widest place: half the section height. Source: handbook habit "widest near mid height"; docs/theory/clearance.md §2.
    /// </summary>
    public double WidestRadius => BeadRadius + (SectionHeight / 2);

    /// <summary>A section with estimated tread width and shoulder drop: the caller lists both as assumptions.</summary>
    /// <remarks>Source: <see cref="TreadShareEstimate"/>, <see cref="ShoulderDropShareEstimate"/> (common practice, no source).</remarks>
    public static TyreSection WithEstimates(
        double axialCentre,
        double beadRadius,
        double beadWidth,
        double outerDiameter,
        double sectionWidth,
        double? treadWidth = null,
        double? shoulderDrop = null) =>
        new(axialCentre,
            beadRadius,
            beadWidth,
            outerDiameter,
            sectionWidth,
            treadWidth ?? (TreadShareEstimate * sectionWidth),
            shoulderDrop ?? (ShoulderDropShareEstimate * ((outerDiameter / 2) - beadRadius)));

    /// <summary>
    /// True when the numbers make a convex tyre: all finite, tread not wider than section, shoulder above the widest
    /// place, no bead so wide that the wall folds.
    /// </summary>
    /// <remarks>Source: docs/theory/clearance.md §2.</remarks>
    public bool IsSound =>
        double.IsFinite(AxialCentre)
        && BeadRadius > 0
        && SectionHeight > 0 && double.IsFinite(SectionHeight)
        && BeadWidth > 0 && BeadWidth <= SectionWidth * 1.3
        && TreadWidth > 0 && TreadWidth <= SectionWidth
        && ShoulderDrop >= 0 && ShoulderDrop < SectionHeight * 0.45
        && double.IsFinite(SectionWidth)
        && Growth >= 0 && double.IsFinite(Growth);
}

/// <summary>Where a wheel's centre plane lies on its hub.</summary>
/// <remarks>Source: docs/frames.md, rim offset and axial coordinate.</remarks>
public static class WheelPlacement
{
    /// <summary>a of the centre plane (m): spacer thickness minus offset, both m. Source: definition of offset (ET).</summary>
    public static double AxialCentre(double offset, double spacer) => spacer - offset;
}
