namespace Cornerwright.Mechanics.Clearance;

/// <summary>A place on the wheel a tape can be held to. Inner is the car's side, outer the street side.</summary>
public enum WheelFeature
{
    Crown = 0,
    OuterShoulder,
    InnerShoulder,
    OuterSidewall,
    InnerSidewall,
    RimOuterLip,
    RimInnerLip,
}

/// <summary>Where the features lie on a cross-section; each is a corner of the polygon the distances are taken to.</summary>
/// <remarks>Source: docs/theory/clearance.md §2.</remarks>
public static class WheelFeatures
{
    /// <summary>Place and outward normal of a feature, S, m.</summary>
    /// <remarks>
    /// Crown: middle of the tread. Shoulder: middle of the shoulder arc, normal square to the line from widest place to tread edge.
    /// Sidewall: the widest place, normal axial (square to the wall on a stretched tyre). Rim lip: the outermost edge's top corner, normal
    /// axial (the lip's face). Source: docs/theory/clearance.md §2.
    /// </remarks>
    public static FeaturePoint At(in TyreSection tyre, in RimSection rim, WheelFeature feature)
    {
        double side = feature is WheelFeature.OuterShoulder or WheelFeature.OuterSidewall or WheelFeature.RimOuterLip ? 1 : -1;
        switch (feature)
        {
            case WheelFeature.Crown:
                return new(new(tyre.AxialCentre, tyre.CrownRadius), 0, 1);
            case WheelFeature.OuterSidewall or WheelFeature.InnerSidewall:
                var wall = new TyreProfile.SideShape(tyre);
                return new(
                    new(tyre.AxialCentre + (side * wall.Widest.A), wall.Widest.R), side * wall.WallNormal.A, wall.WallNormal.R);
            case WheelFeature.OuterShoulder or WheelFeature.InnerShoulder:
                var shape = new TyreProfile.SideShape(tyre);
                ProfilePoint middle = TyreProfile.Conic(shape.Widest, shape.ShoulderCorner, shape.TreadEdge, 0.5);
                double da = shape.Widest.A - shape.TreadEdge.A, dr = shape.TreadEdge.R - shape.Widest.R;
                double length = Math.Sqrt((da * da) + (dr * dr));
                return new(new(tyre.AxialCentre + (side * middle.A), middle.R), side * dr / length, da / length);
            default:
                return new(new(rim.AxialCentre + (side * rim.OverallWidth / 2), rim.LipRadius), side, 0);
        }
    }
}
