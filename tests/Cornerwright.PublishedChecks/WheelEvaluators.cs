using System.Globalization;
using Cornerwright.Garage.Designations;

namespace Cornerwright.PublishedChecks;

/// <summary>Wheels: offset, bolt circle, rim.</summary>
internal static class WheelEvaluators
{
    public static readonly Dictionary<string, Evaluator> All = new()
    {
        ["rim.specified-diameter"] = (_, x) => RimCodes.SpecifiedDiameter(x["code"])!.Value,
        ["rim.flange-j"] = (_, _) => RimGeometry.JFlangeHeight,
        ["rim.well"] = (_, _) => RimGeometry.LeastWellDepth,
        ["wheel.inner-bead"] = (_, x) => InnerBead(Wheel(x.Text("wheel"))),
        ["wheel.outer-bead"] = (_, x) => OuterBead(Wheel(x.Text("wheel"))),
        ["wheel.inner-moves"] = (_, x) => InnerMoves(Wheel(x.Text("from")), Wheel(x.Text("to"))),
        ["wheel.track"] = (_, x) => Track(x),
        ["wheel.outer-flank"] = (_, x) => RimGeometry.MountingFaceToOuterFlank(x["S"], x["ET"]),
        ["wheel.section-other"] = (_, x) => TyreSize.SectionWidthOnOtherRim(x["S"], x["rim"], x["other"]),
        ["wheel.hole-distance"] = (_, x) => RimGeometry.BoltHoleDistance((int)x["n"], x["pcd"]),
        ["wheel.offset-sign"] = (_, x) =>
            $"inset {Sign(x.Text("inset"))}, outset {Sign(x.Text("outset"))}, between {Sign(x.Text("none"))}",
        ["wheel.bolt-circle"] = (_, x) => BoltCircle(Wheel(x.Text("wheel"))),
        ["wheel.designation"] = (_, x) => $"{Parts(Wheel(x.Text("first")))}; {Parts(Wheel(x.Text("second")))}",
    };

    private static RimDesignation Wheel(string text) => RimDesignation.Parse(text, "check").Value;

    private static double InnerBead(RimDesignation wheel) => RimGeometry.MountingFaceToInnerBead(wheel.Width, wheel.Offset!.Value);

    private static double OuterBead(RimDesignation wheel) => RimGeometry.MountingFaceToOuterBead(wheel.Width, wheel.Offset!.Value);

    // Two ways to the same number: the difference of the beads, and the function for a change of wheels.
    private static CheckValue InnerMoves(RimDesignation from, RimDesignation to)
    {
        double byBeads = InnerBead(to) - InnerBead(from);
        double byChange = RimGeometry.InnerLipMovesIn(from.Width, from.Offset!.Value, to.Width, to.Offset!.Value);
        return Math.Abs(byBeads - byChange) < 1e-12 ? byChange : $"two ways differ: {byBeads} and {byChange} m";
    }

    private static CheckValue Track(CheckInputs x)
    {
        double byOffset = RimGeometry.TrackChange(x["ET1"], x["ET2"]);
        double bySpacer = RimGeometry.TrackChange(x["ET1"], x["ET1"], 0, x["spacer"]);
        return Math.Abs(byOffset - bySpacer) < 1e-12 ? byOffset : $"two ways differ: {byOffset} and {bySpacer} m";
    }

    // The mounting face lies on the street side of the rim's centre when the inner bead is the farther one.
    private static string Sign(string text)
    {
        var wheel = Wheel(text);
        double streetward = InnerBead(wheel) - OuterBead(wheel);
        string sign = streetward > 0 ? "positive" : streetward < 0 ? "negative" : "0";
        return Math.Sign(wheel.OffsetMm!.Value) == Math.Sign(streetward) ? sign : "not the sign of ET";
    }

    // Holes placed evenly on a circle of the designated diameter are as far apart as the code says, both ways round.
    private static string BoltCircle(RimDesignation wheel)
    {
        (int n, double circle) = (wheel.BoltCount!.Value, wheel.BoltCircle!.Value);
        double across = Math.Cos(2 * Math.PI / n) * circle / 2, along = Math.Sin(2 * Math.PI / n) * circle / 2;
        double apart = Math.Sqrt(((across - (circle / 2)) * (across - (circle / 2))) + (along * along));
        bool same = Math.Abs(apart - RimGeometry.BoltHoleDistance(n, circle)) < 1e-12
            && Math.Abs(circle - RimGeometry.BoltCircleFromHoleDistance(n, apart)) < 1e-12;
        return same ? "holes lie on the bolt circle" : "holes do not lie on the bolt circle";
    }

    private static string Parts(RimDesignation wheel) =>
        string.Create(CultureInfo.InvariantCulture, $"{wheel.DiameterCode} {wheel.WidthCode} {wheel.Flange}");
}
